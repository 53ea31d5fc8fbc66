import type { Lesson } from '../src/pipeline.ts';
import { listed } from '../src/report/find-wordings.ts';
import { isStateSignal, type SeenWording, stateValues } from '../src/vocabulary.ts';

/** What a person is about to teach of one wording. */
export interface LessonDraft {
  /** Of a message or a unit a pattern; of a parameter or a value its name. */
  readonly text: string;
  /** A signal, or `ignore`; empty until it is chosen. */
  readonly signal: string;
  readonly value: string;
  /** Empty: as the unit and the words say. */
  readonly whose: string;
}

/** A lesson with what it says, for the list of those that are collected. */
export interface NamedLesson {
  readonly lesson: Lesson;
  readonly says: string;
}

/** Where a person begins with a wording: with what it means now. */
export function draftOf({ kind, name, pattern, understood }: SeenWording): LessonDraft {
  const text = kind === 'message' ? pattern : kind === 'unit' ? unitPattern(name) : name;
  const isKnown = understood !== null && kind !== 'unit';
  const signal = isKnown ? (understood.signal ?? 'ignore') : '';
  return { text, signal, value: isKnown ? (understood.value ?? '') : '', whose: '' };
}

/** What stands around a name (brackets), its beginning up to the last mark, that mark, and what stands behind it. */
const parts = /^([^\p{L}\d]*)(?:(.*[\p{L}\d])([^\p{L}\d]+))?([\p{L}\d]+)([^\p{L}\d]*)$/u;

/** The pair is what stands before the last mark of a name, the half what stands behind it; a name without one is a pair. */
function unitPattern(name: string): string {
  const [, before = '', pair = '', mark = '', last = name, after = ''] = parts.exec(name) ?? [];
  const own =
    pair === ''
      ? `(?<pair>${literally(last)})`
      : `(?<pair>${literally(pair)})${literally(mark)}(?<half>[\\pL\\d]+)`;
  return `^${literally(before)}${own}${literally(after)}$`;
}

/** The values to choose from for a signal; empty where the text itself, or none, is meant. */
export function valuesOf(signal: string): readonly string[] {
  return isStateSignal(signal) ? (stateValues[signal] ?? []) : [];
}

const owners = ['pair', 'active', 'standby', 'other'] as const;

/** The lesson that a draft is; `null` while a blank is left. */
export function lessonOf(wording: SeenWording, { text, signal, value, whose }: LessonDraft): Lesson | null {
  if (wording.kind === 'unit') return { kind: 'unit', pattern: text };
  if (signal === '') return null;
  if (signal === 'ignore')
    return { kind: 'ignore', pattern: wording.kind === 'message' ? text : exactly(wording) };
  const isBlank = valuesOf(signal).length > 0 && value === '' && !text.includes('(?<value>');
  if (isBlank && wording.kind !== 'parameter') return null;
  const chosen = value === '' ? null : value;
  if (wording.kind === 'parameter') return { kind: 'parameter', name: text, signal, values: {} };
  if (wording.kind === 'value')
    return { kind: 'value', name: text, text: wording.value ?? '', signal, meaning: chosen };
  return {
    kind: 'message',
    when: text,
    signal,
    value: chosen,
    whose: owners.find((o) => o === whose) ?? null,
  };
}

function exactly(wording: SeenWording): string {
  return `^${literally(listed(wording))}$`;
}

function literally(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

/** `partner-ready: no`. */
export function sayLesson(lesson: Lesson): string {
  if (lesson.kind === 'ignore') return 'nothing: ignored';
  if (lesson.kind === 'message')
    return [lesson.signal, lesson.value, lesson.whose]
      .filter((w) => w !== null && w !== undefined)
      .join(': ');
  if (lesson.kind === 'value') return [lesson.signal, lesson.meaning].filter((w) => w !== null).join(': ');
  return lesson.kind === 'parameter' ? lesson.signal : 'a unit';
}
