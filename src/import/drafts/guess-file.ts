import type { DraftKey, FileDraft } from '../../vocabulary.ts';
import { csvRows } from '../bytes/csv-rows.ts';
import { compilePattern } from '../phrasebook/patterns.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { type ContentGuess, guessByContent, isNamed, type NamedCells } from './guess-columns-by-content.ts';
import { guessLine } from './guess-line.ts';
import type { StampGuess } from './guess-stamp.ts';
import { unitOfFile } from './guess-units.ts';
import { readFields } from './read-fields.ts';

/** What one row says, by the keys of a phrasebook, and what else it has by name. */
export interface SaidRow {
  readonly keys: Readonly<Record<string, string>>;
  readonly others: readonly (readonly [string, string])[];
}

/** What is known besides: the names of all files that are read, and the columns by which a table is read now. */
export interface GuessOptions {
  readonly columns?: Readonly<Record<string, string>>;
  readonly phrasebook: Phrasebook;
  readonly names: readonly string[];
}

/** How a file of unknown layout may be read. */
export interface FileGuess {
  readonly keys: FileDraft['keys'];
  readonly stamp: StampGuess;
  /** The stamps of the first rows. */
  readonly stamps: readonly string[];
  readonly delimiter: string | null;
  /** The line of a table's header; 0 where there is none. */
  readonly headerLine: number;
  /** Some of the units that its lines name; `null` where they name none, or are no plain text. */
  readonly units: readonly string[] | null;
  /** What its rows are all about, where none of them says it. */
  readonly unit: string | null;
  /** A row's cells (of a text: its line) as what they say; `null` for a row that is not read so. */
  take(cells: readonly string[]): SaidRow | null;
}

const mostLines = 400;
const mostly = 0.8;

/** How a file may be read, from its first text; `null` where no stamp is found in it. */
export function guessFile(name: string, text: string, known: GuessOptions): FileGuess | null {
  const lines = text
    .split(/\r?\n/)
    .slice(0, -1)
    .concat(text.length < 65_000 ? [text.split(/\r?\n/).at(-1) ?? ''] : [])
    .filter((line) => line.trim() !== '')
    .slice(0, mostLines);
  return guessFields(name, lines, known) ?? guessTable(name, text, known) ?? guessText(name, lines, known);
}

/** JSON lines and key=value. */
function guessFields(name: string, lines: readonly string[], known: GuessOptions): FileGuess | null {
  const rows = lines.flatMap((line) => readFields(line) ?? []);
  if (rows.length < lines.length * mostly || rows.length === 0) return null;
  const names = [...new Set(rows.flatMap((row) => [...row.keys()]))].slice(0, 60);
  const all = names.map((key) => ({ name: key, cells: rows.map((row) => row.get(key)?.trim() ?? '') }));
  const found = guessByContent(all, known.phrasebook);
  if (found === null) return null;
  const take = (cells: readonly string[]): SaidRow | null => {
    const fields = readFields(cells[0] ?? '');
    return fields === null ? null : saidBy(found.columns, [...fields]);
  };
  return guessed(unitFor(name, found, known), 'lines', found, all, { delimiter: null, headerLine: 0, take });
}

/** A table with a header. */
function guessTable(name: string, text: string, known: GuessOptions): FileGuess | null {
  for (const delimiter of ['\t', ';', ',', '|']) {
    const rows: { readonly line: number; readonly cells: readonly string[] }[] = [];
    const reader = csvRows(delimiter, (row) => {
      if (rows.length <= mostLines)
        rows.push({
          line: row.line,
          cells: Array.from({ length: row.width() }, (_, i) => row.cell(i).trim()),
        });
    });
    reader.push(text);
    reader.end();
    const width = Math.max(0, ...rows.slice(0, 60).map((r) => r.cells.length));
    const wide = rows.filter((r) => r.cells.length === width);
    const [head, ...data] = wide;
    if (width < 2 || head === undefined || data.length < rows.length * mostly - 2 || data.length === 0)
      continue;
    const names = head.cells;
    const isHeader =
      new Set(names).size === width &&
      !names.includes('') &&
      !names.some((n) => /^[\d.,:/ -]+$|\d\d:\d\d/.test(n));
    if (!isHeader) continue;
    const all = names.map((n, i) => ({ name: n, cells: data.map((r) => r.cells[i] ?? '') }));
    const guessedBy = guessByContent(all, known.phrasebook);
    if (guessedBy === null) continue;
    const found = { ...guessedBy, columns: withEnd(known.columns ?? guessedBy.columns, all) };
    const take = (cells: readonly string[]): SaidRow =>
      saidBy(
        found.columns,
        names.map((n, i) => [n, cells[i]?.trim() ?? '']),
      );
    const isTall = found.columns.parameter !== undefined;
    const layout = isTall ? 'readings' : found.columns.message !== undefined ? 'journal' : 'snapshots';
    return guessed(unitFor(name, found, known), layout, found, all, {
      delimiter,
      headerLine: head.line,
      take,
    });
  }
  return null;
}

function saidBy(
  columns: Readonly<Record<string, string>>,
  cells: readonly (readonly [string, string])[],
): SaidRow {
  const byName = new Map(cells);
  const keys = Object.fromEntries(
    Object.entries(columns).map(([key, column]) => [key, byName.get(column) ?? '']),
  );
  const taken = new Set(Object.values(columns));
  return { keys, others: keys.parameter === undefined ? cells.filter(([column]) => !taken.has(column)) : [] };
}

/** What all rows are about, where no column says it. */
function unitFor(name: string, { columns }: ContentGuess, { names }: GuessOptions): string | null {
  return columns.unit === undefined ? unitOfFile(name, names) : null;
}

/** In a journal a column may say until when a condition stood. */
function withEnd(columns: ContentGuess['columns'], all: readonly NamedCells[]): ContentGuess['columns'] {
  const isJournal = columns.message !== undefined && columns.parameter === undefined;
  const ended = isJournal ? all.find((c) => isNamed(c, 'ended')) : undefined;
  return ended === undefined ? columns : { ...columns, ended: ended.name };
}

function guessed(
  unit: string | null,
  layout: string,
  { columns, stamp }: ContentGuess,
  all: readonly NamedCells[],
  how: Pick<FileGuess, 'delimiter' | 'headerLine' | 'take'>,
): FileGuess {
  const cellsOf = (key: string): readonly string[] => all.find((c) => c.name === columns[key])?.cells ?? [];
  const clocks = cellsOf('clock');
  const stamps =
    columns.date === undefined ? cellsOf('time') : cellsOf('date').map((d, i) => `${d} ${clocks[i] ?? ''}`);
  const keys: DraftKey[] = [
    { key: 'layout', value: layout, because: null },
    { key: 'columns', value: columns, because: 'a guess by the names of the columns and by what they hold' },
    ...unitKey(unit),
  ];
  return { keys, stamp, stamps: stamps.filter((s) => s.trim() !== ''), units: null, unit, ...how };
}

function unitKey(unit: string | null): readonly DraftKey[] {
  if (unit === null) return [];
  return [{ key: 'unit', value: unit, because: "a guess from the file's name: nothing in it names a unit" }];
}

/** Any other text: by the stamps of its lines. */
function guessText(name: string, lines: readonly string[], known: GuessOptions): FileGuess | null {
  const found = guessLine(lines, known.phrasebook);
  if (found === null) return null;
  const pattern = compilePattern(found.line, false);
  if (typeof pattern === 'string') throw new Error(`A pattern was drafted that is none: ${pattern}`);
  const unit = found.units === null ? unitOfFile(name, known.names) : null;
  const { line, record, stamp } = found;
  const begins: readonly DraftKey[] =
    record === null
      ? []
      : [
          {
            key: 'record',
            value: record,
            because: 'a guess: some lines begin without a timestamp and belong to the one before',
          },
        ];
  return {
    keys: [
      { key: 'layout', value: 'lines', because: null },
      ...begins,
      { key: 'line', value: line, because: `a guess from ${lines.length} lines` },
      ...unitKey(unit),
    ],
    stamp,
    stamps: lines.flatMap((l) => stamp.split(l)?.stamp ?? []),
    delimiter: null,
    headerLine: 0,
    units: found.units,
    unit,
    take(cells) {
      const groups = pattern.match(cells[0] ?? '');
      return groups === null ? null : { keys: groups, others: [] };
    },
  };
}
