import { timeReader } from '../clock/time-reader.ts';
import { zoneOf } from '../clock/zones.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { isSeverity, isSeverityLetter } from '../phrasebook/severity-words.ts';

/** One column of a table with the cells of its first rows. */
export interface SampleColumn {
  readonly name: string;
  readonly index: number;
  /** Trimmed; empty where a row is shorter. */
  readonly cells: readonly string[];
}

export const mostRows = 40;
const mostly = 0.8;

/** The columns of a header over the first rows; delimiters at the end of a row add nothing. */
export function sampleColumns(
  header: readonly string[],
  rows: readonly (readonly string[])[],
): readonly SampleColumn[] {
  const sample = rows.slice(0, mostRows);
  return header.map((name, index) => ({
    name: name.trim(),
    index,
    cells: sample.map((row) => row[index]?.trim() ?? ''),
  }));
}

/** Whether most of the cells that hold anything hold such; a column without any holds nothing. */
export function holdsMostly(
  { cells }: Pick<SampleColumn, 'cells'>,
  holds: (cell: string) => boolean,
): boolean {
  const full = cells.filter((cell) => cell !== '');
  return full.length > 0 && full.filter(holds).length >= mostly * full.length;
}

const clock = /^\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?(?:\s*[ap]\.?m\.?)?$|^\d{1,2}\.\d{2}\.\d{2}$/i;

/** A clock without a date: `09:14:05`, `9:14 pm`, `09.14.05`. */
export function isClock(cell: string): boolean {
  return clock.test(cell);
}

/** Whether the text of a cell is a time, in either order of day and month. */
export function timeTest({ pattern }: Pick<Phrasebook, 'pattern'>): (cell: string) => boolean {
  const readers = (['day-first', 'month-first'] as const).map((order) =>
    timeReader(zoneOf('UTC', ''), order, 2000, pattern),
  );
  return (cell) => readers.some((reader) => typeof reader.read(cell) === 'number');
}

/** What a cell says of time: a date without a clock, a clock, both, or nothing. */
export function stampTest(phrasebook: Pick<Phrasebook, 'pattern'>): {
  readonly isStamp: (cell: string) => boolean;
  readonly isDate: (cell: string) => boolean;
} {
  const isTime = timeTest(phrasebook);
  // A count of seconds has its clock in it, and so has anything that shows one.
  const hasClock = (cell: string): boolean => /\d[:.]\d{2}(?!.*[/.-]\d{4})|^\d+(?:\.\d+)?$|\dT\d/.test(cell);
  const isDate = (cell: string): boolean => !isClock(cell) && isTime(cell) && !clockIn(cell, hasClock);
  return { isDate, isStamp: (cell) => isTime(cell) && !isDate(cell) };
}

/** Whether a stamp shows a clock: not in `14.03.2026`, whose parts are those of a date. */
function clockIn(cell: string, hasClock: (cell: string) => boolean): boolean {
  return cell.includes(':') || (!/^\d{1,4}[./-]\d{1,2}[./-]\d{1,4}$/.test(cell) && hasClock(cell));
}

/** A number, with a point or a comma, of either sign. */
export function isNumber(cell: string): boolean {
  return /^[+-]?\d+(?:[.,]\d+)?\s*%?$/.test(cell);
}

/** A word of severity, or a letter for one: a column of its own makes clear what a letter is. */
export function isSeverityCell(cell: string): boolean {
  return isSeverity(withoutBrackets(cell)) || isSeverityLetter(cell);
}

/** Not by one pattern for both ends: over a long run of blanks that takes the square of its length. */
function withoutBrackets(cell: string): string {
  const opened = /^[[(<]/.test(cell) ? cell.slice(1).trimStart() : cell;
  return /[\])>]$/.test(opened) ? opened.slice(0, -1).trimEnd() : opened;
}

/** Whether a column repeats itself, as names do. */
export function repeats({ cells }: SampleColumn): boolean {
  return new Set(cells).size * 2 <= cells.length;
}

/** How much text stands in a column. */
export function lengthOf({ cells }: SampleColumn): number {
  return cells.reduce((sum, cell) => sum + cell.length, 0);
}
