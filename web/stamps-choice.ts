import type { Lesson } from '../src/pipeline.ts';
import { zoneNamed, zoneProblem } from './zone-search.ts';

/** What stands in the fields on time zone and date format; empty where nothing does. */
export interface StampsTyped {
  readonly zone: string;
  readonly order: string;
  readonly year: string;
}

type TimeLesson = Extract<Lesson, { readonly kind: 'time' }>;

/** What the fields make: a rule, or what is wrong and in which field. */
export type StampsRule =
  | { readonly kind: 'rule'; readonly lesson: TimeLesson; readonly says: string }
  | { readonly kind: 'wrong'; readonly field: keyof StampsTyped; readonly says: string };

/** What is wrong with the text of a year; `null` where nothing is, or nothing was typed. */
export function yearProblem(text: string): string | null {
  const typed = text.trim();
  return typed === '' || /^(?:19|20)\d\d$/.test(typed)
    ? null
    : 'Give the year with four digits, such as 2026.';
}

/** The rule that the fields make. */
export function stampsRule({ zone, order, year }: StampsTyped): StampsRule {
  const wrongZone = zoneProblem(zone);
  if (wrongZone !== null) return { kind: 'wrong', field: 'zone', says: wrongZone };
  const wrongYear = yearProblem(year);
  if (wrongYear !== null) return { kind: 'wrong', field: 'year', says: wrongYear };
  const lesson: TimeLesson = {
    kind: 'time',
    zone: zone.trim() === '' ? null : zoneNamed(zone),
    order: order === 'day-first' || order === 'month-first' ? order : null,
    year: year.trim() === '' ? null : Number(year),
  };
  const said = [lesson.zone, lesson.order, lesson.year].filter((part) => part !== null);
  return said.length === 0
    ? { kind: 'wrong', field: 'zone', says: 'Choose a time zone, an order or a year first.' }
    : { kind: 'rule', lesson, says: `timestamps: ${said.join(', ')}` };
}
