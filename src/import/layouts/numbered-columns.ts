import { InputError } from '../bytes/input-error.ts';
import type { FileRule, Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { timeTest } from './column-content.ts';
import { columnNumber, type Head, headOf, timeColumns } from './head.ts';

/** A row that could be the header of a table. */
export interface Header {
  readonly head: Head;
  readonly delimiter: string;
  readonly line: number;
  /** It is the first row of a table without a header, whose columns have numbers for names. */
  readonly isRow?: true;
}

/**
 * Of the rows that could be the header of a table whose time a rule names by its number, so that any row would do: the one
 * before a row with a time in that column, or, where it holds a time itself, the first row of a table without a header. All of
 * them where the time is named otherwise, or none is such a row.
 */
export function headersByNumber(
  candidates: readonly Header[],
  rule: FileRule | undefined,
  phrasebook: Phrasebook,
): readonly Header[] {
  const { time, date } = rule?.columns ?? {};
  if (columnNumber(time ?? date ?? '') === null) return candidates;
  const isTime = timeTest(phrasebook);
  const holdsTime = (names: readonly string[], places: readonly number[]): boolean =>
    isTime(places.map((place) => names[place] ?? '').join(' '));
  const found = candidates.flatMap((candidate, index): readonly Header[] => {
    const { head, delimiter, line } = candidate;
    const places = timeColumns(head);
    if (places.length === 0) return [];
    if (holdsTime(head.names, places)) {
      const names = head.names.map((_, place) => `#${place + 1}`);
      return [{ head: headOf(names, [], rule), delimiter, line: line - 1, isRow: true }];
    }
    const next = candidates[index + 1];
    const isHeader = next?.delimiter === delimiter && holdsTime(next.head.names, places);
    return isHeader ? [candidate] : [];
  });
  return found.length === 0 ? candidates : found;
}

/** Throws InputError where a rule names a column by a number that a table has not. */
export function checkNumbers(name: string, { names, rule }: Head): void {
  for (const [key, column = ''] of Object.entries(rule?.columns ?? {})) {
    const number = columnNumber(column);
    if (number === null || number <= names.length || names.includes(column)) continue;
    throw new InputError(
      name,
      `columns.${key} of the rule for "${rule?.match}" is "${column}", but the table has ${names.length} columns.`,
      'Correct it in the phrasebook: the first column is "#1".',
    );
  }
}
