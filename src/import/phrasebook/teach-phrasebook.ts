import type { Subject, UnmatchedWording } from '../../vocabulary.ts';
import { zoneOf } from '../clock/zones.ts';
import { entryReader } from './entries.ts';
import { parsePhrasebook } from './phrasebook.ts';
import type { Phrasebook } from './phrasebook-rules.ts';
import { subjectOf } from './subjects.ts';
import { valueMeant } from './values.ts';
import { editYaml } from './yaml-file.ts';

/** One thing a person teaches: what a wording, a parameter or a file's columns mean. */
export type Lesson =
  | {
      readonly kind: 'message';
      readonly when: string;
      readonly signal: string;
      readonly value: string | null;
    }
  | {
      readonly kind: 'parameter';
      readonly name: string;
      readonly signal: string;
      readonly values: Readonly<Record<string, string>>;
    }
  | { readonly kind: 'ignore'; readonly pattern: string }
  /** A pattern with the groups `pair` and `half`. */
  | { readonly kind: 'unit'; readonly pattern: string }
  /** How stamps are read; what is `null` stays as it was. */
  | {
      readonly kind: 'time';
      readonly zone: string | null;
      readonly order: 'day-first' | 'month-first' | null;
      readonly year: number | null;
    }
  | {
      readonly kind: 'columns';
      readonly match: string;
      readonly layout: string;
      readonly columns: Readonly<Record<string, string>>;
    };

/**
 * The phrasebook's text with a lesson added; comments and order stay. `null` stands for no phrasebook yet. Throws
 * InputError, as `parsePhrasebook` does, if the lesson does not fit.
 */
export function addLesson(
  file: string,
  yaml: string | null,
  lesson: Lesson,
  layouts: readonly string[],
): string {
  const taught = editYaml(file, yaml ?? '', (document) => {
    if (lesson.kind === 'message') {
      const { when, signal, value } = lesson;
      document.append('messages', { when, signal, ...(value === null ? {} : { value }) });
    } else if (lesson.kind === 'parameter') {
      const { name, signal, values } = lesson;
      const known = Object.keys(values).length === 0 ? {} : { values };
      document.put('parameters', name, { signal, ...known });
    } else if (lesson.kind === 'ignore') document.append('ignore', lesson.pattern);
    else if (lesson.kind === 'unit') document.append('units', { pattern: lesson.pattern });
    else if (lesson.kind === 'time') {
      const { zone, order, year } = lesson;
      if (zone !== null) zoneOf(zone, file);
      for (const [key, value] of Object.entries({ zone, order, year }))
        if (value !== null) document.put('time', key, value);
    } else {
      const { match, layout, columns } = lesson;
      // Before the others: of the rules for files the first that fits wins.
      document.prepend('files', { match, layout, columns });
    }
  });
  parsePhrasebook(file, taught, layouts);
  return taught;
}

/** A pattern that fits a wording and nothing else, for a person to loosen. */
export function exactPattern(wording: string): string {
  return `^${wording.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`;
}

const somewhere: Subject = { pair: 'pair', half: '1', role: null };

/**
 * How many of the rows that are not understood a lesson would use (or, for `ignore`, set aside). Columns and stamps are
 * taught for what could not be read at all: 0. Throws InputError if the lesson does not fit.
 */
export function countTaught(
  lesson: Lesson,
  unmatched: readonly UnmatchedWording[],
  layouts: readonly string[],
): number {
  const file = 'the new rule';
  const phrasebook = parsePhrasebook(file, addLesson(file, null, lesson, layouts), layouts);
  const isTaught = understandingOf(lesson, phrasebook);
  return unmatched.reduce((sum, { wording, count }) => sum + (isTaught(wording) ? count : 0), 0);
}

/** Wording is listed as `parameter NAME`, `NAME = value`, `unit NAME`, or as the message itself. */
function understandingOf(lesson: Lesson, phrasebook: Phrasebook): (wording: string) => boolean {
  const reader = entryReader(phrasebook);
  switch (lesson.kind) {
    case 'columns':
    case 'time':
      return () => false;
    case 'message':
      return (wording) => Array.isArray(reader.read(somewhere, wording));
    case 'ignore':
      return (wording) => reader.read(somewhere, wording) === 'ignored';
    case 'unit':
      return (wording) => {
        const name = /^unit (.*)$/s.exec(wording)?.[1];
        return name !== undefined && subjectOf(phrasebook, { unit: name, half: '', role: '' }) !== null;
      };
    case 'parameter':
      return (wording) => {
        if (wording === `parameter ${lesson.name}`) return true;
        const prefix = `${lesson.name} = `;
        const rule = phrasebook.parameters.get(lesson.name);
        if (rule === undefined || !wording.startsWith(prefix)) return false;
        return valueMeant(rule.signal, rule.values, wording.slice(prefix.length)) !== undefined;
      };
  }
}
