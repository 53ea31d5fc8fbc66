import { InputError } from '../bytes/input-error.ts';
import { type ColumnKey, columnSpellings } from '../phrasebook/column-keys.ts';
import type { FileRule, Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { folded, parameterNamed } from '../phrasebook/plain-parameters.ts';
import { unitMeant } from '../phrasebook/subjects.ts';
import {
  holdsMostly,
  isClock,
  isNumber,
  isSeverityCell,
  lengthOf,
  mostRows,
  repeats,
  type SampleColumn,
  sampleColumns,
  stampTest,
} from './column-content.ts';
import { isQuality, isQualityName } from './quality.ts';
import { isAcknowledgement, stateColumn } from './state-column.ts';
import { isTag } from './tag-names.ts';

/** What the columns of a table with an unknown header hold, found by their content. */
export interface GuessedColumns {
  readonly layout: 'readings' | 'snapshots' | 'journal';
  readonly columns: FileRule['columns'];
  readonly because: string;
}

const leastRows = 3;
const mostly = 0.8;

/** The columns by what they hold; `stamp` is one column, or those of the date and the clock. */
interface Sorted {
  readonly stamp: Readonly<Partial<Record<ColumnKey, string>>>;
  readonly unit: SampleColumn | undefined;
  /** What is neither, nor a severity, a quality or a clock. */
  readonly others: readonly SampleColumn[];
}

/**
 * The time, the unit and what is said of it, by what stands in the first rows of a table. `null` where the header holds a
 * time itself, so that it is none, or where no column holds times, or none repeats itself as units do. Throws InputError
 * where dates stand in one column and clocks in several.
 */
export function guessColumns(
  file: string,
  header: readonly string[],
  rows: readonly (readonly string[])[],
  phrasebook: Phrasebook,
): GuessedColumns | null {
  const width = header.length;
  const sample = rows.slice(0, mostRows).filter((row) => isAsWide(row, width));
  if (width < 3 || sample.length < leastRows || sample.length < mostly * Math.min(rows.length, mostRows))
    return null;
  const { isDate, isStamp } = stampTest(phrasebook);
  if (header.some((name) => isDate(name.trim()) || isStamp(name.trim()))) return null;
  const sorted = sortColumns(file, usable(sampleColumns(header, sample)), phrasebook);
  if (sorted === null) return null;
  const found = tagsOf(sorted, phrasebook) ?? snapshotsOf(sorted, phrasebook) ?? rowsOf(sorted);
  if (found === null) return null;
  const words = Object.entries(found.columns).map(([key, name]) => `"${name}" as the ${key}`);
  return {
    ...found,
    because: `its header names no known column; by their contents these were taken: ${words.join(', ')}. Correct it under files in a phrasebook if that is wrong`,
  };
}

/** Delimiters at the end of a row, or a few that are missing there, make it no other row. */
function isAsWide(row: readonly string[], width: number): boolean {
  return row.length >= 3 && row.length <= width;
}

/** Columns that a rule can name: those with a name of their own, in which something stands. */
function usable(columns: readonly SampleColumn[]): readonly SampleColumn[] {
  const times = new Map<string, number>();
  for (const { name } of columns) times.set(name, (times.get(name) ?? 0) + 1);
  return columns.filter(
    ({ name, cells }) => name !== '' && times.get(name) === 1 && cells.some((c) => c !== ''),
  );
}

function sortColumns(file: string, columns: readonly SampleColumn[], phrasebook: Phrasebook): Sorted | null {
  const { isDate, isStamp } = stampTest(phrasebook);
  const begins = columns.filter(({ name }) => !ends.includes(folded(name)));
  const full = begins.find((c) => holdsMostly(c, isStamp));
  const date = full === undefined ? begins.find((c) => holdsMostly(c, isDate)) : undefined;
  const time = full ?? date;
  if (time === undefined) return null;
  const clocks = columns.filter((c) => c !== time && holdsMostly(c, isClock));
  const others = columns.filter(
    (c) => c !== time && !clocks.includes(c) && !holdsMostly(c, isSeverityCell) && !isOfQualities(c),
  );
  const named = others.filter((c) => !holdsMostly(c, isNumber) && !holdsMostly(c, isDate));
  const holdsUnits = (c: SampleColumn): boolean => holdsMostly(c, (cell) => isUnit(phrasebook, cell));
  // "door 1", "door 2" are written as units are; a message goes on like that, units come again.
  const unit =
    named.filter(repeats).find(holdsUnits) ??
    named.find((c) => holdsUnits(c) && c.cells.every((cell) => !/\s/.test(cell))) ??
    named.filter(repeats).find((c) => !holdsMostly(c, (cell) => isTag(phrasebook, cell)));
  return {
    stamp: full === undefined ? dateAndClock(file, time, clocks) : { time: time.name },
    unit,
    others: others.filter((c) => c !== unit),
  };
}

/** A column of instants that is named so is none of when a row's happening was. */
const ends = columnSpellings('ended');

function isOfQualities(column: SampleColumn): boolean {
  return isQualityName(column.name) && holdsMostly(column, isQuality);
}

/** A date and the clock that stands in another column. Throws InputError where several hold clocks: each may be it. */
export function dateAndClock(
  file: string,
  date: SampleColumn,
  clocks: readonly SampleColumn[],
): Readonly<Partial<Record<ColumnKey, string>>> {
  const [clock, other] = clocks;
  if (clock === undefined) return { time: date.name };
  if (other === undefined) return { date: date.name, clock: clock.name };
  const base = file.split(/[/\\]/).at(-1) ?? file;
  throw new InputError(
    file,
    `column "${date.name}" has dates such as "${date.cells[0] ?? ''}", and both "${clock.name}" and "${other.name}" have clocks.`,
    `Choose one in the phrasebook: files: [{ match: ${JSON.stringify(base)}, columns: { date: ${JSON.stringify(date.name)}, clock: ${JSON.stringify(clock.name)} } }].`,
  );
}

type Found = Omit<GuessedColumns, 'because'>;

/** A tag per row, `RO1-A.Role`, and its value: there is no column of units. */
function tagsOf({ stamp, unit, others }: Sorted, phrasebook: Phrasebook): Found | null {
  const tags = others.find((c) => holdsMostly(c, (cell) => isTag(phrasebook, cell)));
  if (tags === undefined || unit === tags) return null;
  const rest = [...(unit === undefined ? [] : [unit]), ...others].filter((c) => c !== tags);
  const value = rest.find((c) => /value|reading|wert|valor|valeur/i.test(c.name)) ?? rest[0];
  if (value === undefined) return null;
  return { layout: 'readings', columns: { ...stamp, parameter: tags.name, value: value.name } };
}

/** A column of units, and others that are named like parameters. */
function snapshotsOf({ stamp, unit, others }: Sorted, phrasebook: Phrasebook): Found | null {
  if (unit === undefined || !others.some(({ name }) => parameterNamed(phrasebook, name) !== undefined))
    return null;
  return { layout: 'snapshots', columns: { ...stamp, unit: unit.name } };
}

/** Names that repeat themselves beside one more column are parameters and their values; else the longest text is the message. */
function rowsOf({ stamp, unit, others }: Sorted): Found | null {
  const [first, second, ...more] = others;
  if (unit === undefined || first === undefined) return null;
  const isAlarm = stateColumn(others) !== undefined;
  if (
    !isAlarm &&
    second !== undefined &&
    more.length === 0 &&
    repeats(first) &&
    !holdsMostly(first, isNumber)
  )
    return {
      layout: 'readings',
      columns: { ...stamp, unit: unit.name, parameter: first.name, value: second.name },
    };
  const state = stateColumn(others);
  const rest = others.filter((c) => c !== state && !isAcknowledgement(c));
  const worded = rest.filter((c) => !holdsMostly(c, isNumber));
  const message = (worded.length > 0 ? worded : others).reduce((a, b) => (lengthOf(b) > lengthOf(a) ? b : a));
  const said = state === undefined || state === message ? {} : { state: state.name };
  return { layout: 'journal', columns: { ...stamp, unit: unit.name, message: message.name, ...said } };
}

function isUnit(phrasebook: Phrasebook, cell: string): boolean {
  const meant = unitMeant(phrasebook, { unit: cell, half: '', role: '' });
  // Any word could be the name of a pair; a unit with a half, a role or a figure in its name is one.
  return meant !== null && (meant.by !== 'word' || /\d/.test(meant.subject.pair));
}
