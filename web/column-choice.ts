import type { Lesson } from '../src/pipeline.ts';
import type { TriedTable } from '../src/vocabulary.ts';
import type { NamedRule } from './teach-rules.ts';
import { literally } from './unit-pattern.ts';

/** What a column is not: read as a key of a row. */
export const notUsed = 'ignore';

/** What each column of a table was chosen to be, in their order: a key of the phrasebook, `ignore`, or empty. */
export type ColumnChoice = readonly string[];

/** The layout that the columns make: rows of readings, of messages, or of polls with a parameter in every other column. */
export function layoutOf(chosen: ColumnChoice): 'readings' | 'journal' | 'snapshots' {
  if (chosen.includes('parameter')) return 'readings';
  return chosen.includes('message') ? 'journal' : 'snapshots';
}

/** What a column is that was not chosen to be anything. */
export function sayOther(chosen: ColumnChoice): string {
  return layoutOf(chosen) === 'snapshots' ? 'a parameter of this name' : 'not used';
}

/** The rule for a file that the columns make; all rows are of `unit` where it is not empty. */
export function columnRule(
  file: string,
  match: string,
  names: readonly string[],
  chosen: ColumnChoice,
  unit: string,
): NamedRule {
  const layout = layoutOf(chosen);
  const columns = Object.fromEntries(
    chosen.flatMap((key, i) => (key === '' || key === notUsed ? [] : [[key, names[i] ?? '']])),
  );
  const keys = { layout, columns, ...(unit.trim() === '' ? {} : { unit: unit.trim() }) };
  const ignored = layout !== 'snapshots' ? [] : names.filter((_, i) => chosen[i] === notUsed);
  const lessons: readonly Lesson[] = [
    { kind: 'file', match, keys },
    ...ignored.map((name) => ({ kind: 'ignore', pattern: `^parameter ${literally(name)}$` }) as const),
  ];
  return { key: `file ${file}`, says: `${match}: columns ${sayColumns(columns)}`, lessons };
}

function sayColumns(columns: Readonly<Record<string, string>>): string {
  return Object.entries(columns)
    .map(([key, name]) => `${key} "${name}"`)
    .join(', ');
}

/** What is wrong with the choice of each column, to be said beside it; `null` where nothing is. */
export function columnProblems(chosen: ColumnChoice, table: TriedTable): readonly (string | null)[] {
  const [unread] = table.rows.flatMap(({ problem }) => problem ?? []);
  const time = chosen.findIndex((key) => key === 'time' || key === 'date');
  return chosen.map((key, i) => {
    if (key !== '' && key !== notUsed && chosen.indexOf(key) < i)
      return `Another column is the ${key} already. Choose one of them.`;
    return unread !== undefined && i === time ? unread : null;
  });
}

const words: Readonly<Record<TriedTable['missing'][number], string>> = {
  time: 'the column of the time',
  unit: 'the column of the unit, or the unit of all rows',
  parameter: 'the column with the names of the parameters',
  value: 'the column of the value',
};

/** What is still to be chosen; `null` where nothing is. */
export function sayMissing({ missing }: Pick<TriedTable, 'missing'>): string | null {
  if (missing.length === 0) return null;
  return `Still missing: ${missing.map((part) => words[part]).join('; ')}.`;
}
