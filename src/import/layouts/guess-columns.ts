import { timeReader } from '../clock/time-reader.ts';
import { zoneOf } from '../clock/zones.ts';
import type { ColumnKey } from '../phrasebook/column-keys.ts';
import type { FileRule, Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { subjectOf } from '../phrasebook/subjects.ts';

/** What the columns of a table with an unknown header hold, found by their content. */
export interface GuessedColumns {
  readonly columns: FileRule['columns'];
  readonly because: string;
}

const leastRows = 3;
const mostRows = 40;
const mostly = 0.8;

/**
 * The time, the unit and what is said of it, by what stands in the first rows of a table. `null` where the header holds a
 * time itself, so that it is none, or where no column holds times, or none repeats itself as units do.
 */
export function guessColumns(
  header: readonly string[],
  rows: readonly (readonly string[])[],
  phrasebook: Phrasebook,
): GuessedColumns | null {
  const sample = rows.slice(0, mostRows).filter((row) => row.length === header.length);
  if (
    header.length < 3 ||
    sample.length < leastRows ||
    sample.length < mostly * Math.min(rows.length, mostRows)
  )
    return null;
  const isTime = timeTest(phrasebook);
  if (header.some(isTime) || new Set(header).size < header.length || header.includes('')) return null;
  const columns = header.map((name, index) => ({
    name,
    cells: sample.map((row) => row[index]?.trim() ?? ''),
  }));
  const time = columns.find(({ cells }) => shareOf(cells, isTime) >= mostly);
  const others = columns.filter((c) => c !== time && c.cells.some((cell) => cell !== ''));
  const repeating = others.filter(({ cells }) => repeats(cells));
  const unit =
    repeating.find(({ cells }) => shareOf(cells, (cell) => isUnit(phrasebook, cell)) >= mostly) ??
    repeating[0];
  const [first, second, ...more] = others.filter((c) => c !== unit);
  if (time === undefined || unit === undefined || first === undefined) return null;
  const isReadings = second !== undefined && more.length === 0 && repeats(first.cells);
  const message = [first, ...(second === undefined ? [] : [second]), ...more].reduce((a, b) =>
    lengthOf(b.cells) > lengthOf(a.cells) ? b : a,
  );
  const said: Partial<Record<ColumnKey, string>> = isReadings
    ? { time: time.name, unit: unit.name, parameter: first.name, value: second.name }
    : { time: time.name, unit: unit.name, message: message.name };
  const words = Object.entries(said).map(([key, name]) => `"${name}" as the ${key}`);
  return {
    columns: said,
    because: `nothing names its columns; by what they hold ${words.join(', ')} were taken. Say it in a phrasebook if that is wrong`,
  };
}

/** Whether the text of a cell is a time, in either order of day and month. */
export function timeTest({ pattern }: Phrasebook): (cell: string) => boolean {
  const readers = (['day-first', 'month-first'] as const).map((order) =>
    timeReader(zoneOf('UTC', ''), order, 2000, pattern),
  );
  return (cell) => readers.some((reader) => typeof reader.read(cell) === 'number');
}

function isUnit(phrasebook: Phrasebook, cell: string): boolean {
  const subject = subjectOf(phrasebook, { unit: cell, half: '', role: '' });
  // Any word could be the name of a pair; a unit with a half, a role or a figure in its name is one.
  return subject !== null && (subject.half !== null || subject.role !== null || /\d/.test(subject.pair));
}

function repeats(cells: readonly string[]): boolean {
  return new Set(cells).size * 2 <= cells.length;
}

function shareOf(cells: readonly string[], holds: (cell: string) => boolean): number {
  return cells.filter(holds).length / cells.length;
}

function lengthOf(cells: readonly string[]): number {
  return cells.reduce((sum, cell) => sum + cell.length, 0);
}
