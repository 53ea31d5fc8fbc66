import { zoneOf } from '../clock/zones.ts';
import { parsePhrasebook } from './phrasebook.ts';
import { editYaml, type YamlEdit } from './yaml-file.ts';

/** One thing a person teaches: what a wording, a parameter or a file's columns mean. */
export type Lesson =
  | {
      readonly kind: 'message';
      readonly when: string;
      readonly signal: string;
      readonly value: string | null;
      /** Of which half or of the pair, where the unit and the words do not say it; `other`: of the half that does not speak. */
      readonly whose?: 'pair' | 'active' | 'standby' | 'other' | null;
    }
  /** One value of a parameter; the values that are known already stay. */
  | {
      readonly kind: 'value';
      readonly name: string;
      readonly text: string;
      readonly signal: string;
      readonly meaning: string | null;
    }
  | {
      readonly kind: 'parameter';
      readonly name: string;
      readonly signal: string;
      readonly values: Readonly<Record<string, string>>;
    }
  | { readonly kind: 'ignore'; readonly pattern: string }
  /** A pattern with the groups `pair` and `half`, or with a `pair` beside it. */
  | { readonly kind: 'unit'; readonly pattern: string; readonly pair?: string | null }
  /** A whole rule for files. */
  | {
      readonly kind: 'file';
      readonly match: string;
      readonly keys: Readonly<Record<string, string | number | Readonly<Record<string, string | number>>>>;
    }
  /** How stamps are read; what is `null` stays as it was. */
  | {
      readonly kind: 'time';
      readonly zone: string | null;
      readonly order: 'day-first' | 'month-first' | null;
      readonly year: number | null;
      readonly format?: string | null;
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
  return addLessons(file, yaml, [lesson], layouts);
}

/** The same with several, the first first. */
export function addLessons(
  file: string,
  yaml: string | null,
  lessons: readonly Lesson[],
  layouts: readonly string[],
): string {
  const taught = editYaml(file, yaml ?? '', (document) => {
    for (const lesson of lessons) putLesson(file, lesson, document);
  });
  parsePhrasebook(file, taught, layouts);
  return taught;
}

function putLesson(file: string, lesson: Lesson, document: YamlEdit): void {
  switch (lesson.kind) {
    case 'message': {
      const { when, signal, value, whose } = lesson;
      const about = whose == null ? {} : whose === 'other' ? { of: whose } : { subject: whose };
      document.append('messages', { when, signal, ...(value === null ? {} : { value }), ...about });
      break;
    }
    case 'parameter': {
      const { name, signal, values } = lesson;
      const known = Object.keys(values).length === 0 ? {} : { values };
      document.put('parameters', name, { signal, ...known });
      break;
    }
    case 'value': {
      const { name, text, signal, meaning } = lesson;
      document.within('parameters', [name, 'signal'], signal);
      if (meaning !== null) document.within('parameters', [name, 'values', text], meaning);
      break;
    }
    case 'ignore':
      document.append('ignore', lesson.pattern);
      break;
    case 'unit': {
      const { pattern, pair } = lesson;
      document.append('units', { pattern, ...(pair == null ? {} : { pair }) });
      break;
    }
    case 'time': {
      const { zone, order, year, format } = lesson;
      if (zone !== null) zoneOf(zone, file);
      for (const [key, value] of Object.entries({ zone, order, year, format: format ?? null }))
        if (value !== null) document.put('time', key, value);
      break;
    }
    // Before the others: of the rules for files the first that fits wins.
    case 'file':
      document.prepend('files', { match: lesson.match, ...lesson.keys });
      break;
    case 'columns': {
      const { match, layout, columns } = lesson;
      document.prepend('files', { match, layout, columns });
      break;
    }
  }
}

/** A pattern that fits a wording and nothing else, for a person to loosen. */
export function exactPattern(wording: string): string {
  return `^${wording.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`;
}
