import type { TriedRow, TriedTable } from '../../vocabulary.ts';
import { detectEncoding } from '../bytes/decode.ts';
import type { FileSource } from '../bytes/file-source.ts';
import { readHead } from '../bytes/read-head.ts';
import type { Row } from '../bytes/row.ts';
import type { Sink } from '../changes/sink.ts';
import { orderEvidence } from '../clock/date-order.ts';
import type { DateOrder } from '../clock/stamp.ts';
import { timeReader } from '../clock/time-reader.ts';
import { zoneOf } from '../clock/zones.ts';
import { type Head, hasUnit, headOf, timeColumns } from '../layouts/head.ts';
import { importers } from '../layouts/importers.ts';
import { columnKeys } from '../phrasebook/column-keys.ts';
import { ruleFor, subjectIn, withStamps } from '../phrasebook/file-subject.ts';
import type { FileSubject, Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import type { UnitParts } from '../phrasebook/subjects.ts';
import { type SampleRow, type SampleTable, sampleTable } from './sample-table.ts';
import { type Understander, understander } from './understanding.ts';

const mostRows = 5;
const mostSaid = 4;

/**
 * The first five rows of a table as a phrasebook would have them read, and what is still missing; `null` for a file that is no
 * table. `now` is the year for stamps that print none.
 */
export async function tryColumns(
  source: FileSource,
  phrasebook: Phrasebook,
  now: number,
): Promise<TriedTable | null> {
  const bytes = await readHead(source);
  const encoding = detectEncoding(bytes);
  if (encoding === null) return null;
  const text = new TextDecoder(encoding.label).decode(bytes, { stream: true });
  const table = sampleTable(text);
  if (table === null) return null;
  const rule = ruleFor(phrasebook, source.name);
  const head = headOf(table.names, [], rule);
  const { names, headerLine } = table;
  return {
    names,
    headerLine,
    examples: names.map((_, i) => exampleOf(table, i)),
    keys: keysOf(head),
    ...(rule?.of === undefined ? {} : { unit: rule.of.text }),
    missing: missingIn(head),
    rows: readRows(table, head, withStamps(phrasebook, rule), now),
  };
}

/** What stands first in a column. */
function exampleOf({ rows }: SampleTable, column: number): string {
  return rows.map(({ cells }) => cells[column]?.trim() ?? '').find((cell) => cell !== '') ?? '';
}

function keysOf(head: Head): readonly string[] {
  const found = new Map(columnKeys.map((key) => [head.column(key), key]));
  return head.names.map((_, i) => found.get(i) ?? '');
}

/** What no column says yet. Where neither a message nor a parameter is named, every other column is a parameter. */
function missingIn(head: Head): TriedTable['missing'] {
  const [parameter, value] = [head.column('parameter'), head.column('value')];
  return [
    ...(timeColumns(head).length > 0 ? [] : (['time'] as const)),
    ...(hasUnit(head, null) ? [] : (['unit'] as const)),
    ...(parameter >= 0 && value < 0 ? (['value'] as const) : []),
    ...(value >= 0 && parameter < 0 ? (['parameter'] as const) : []),
  ];
}

/** The layout that the named columns make. */
function layoutOf(head: Head): 'readings' | 'journal' | 'snapshots' {
  if (head.column('parameter') >= 0) return 'readings';
  return head.column('message') >= 0 ? 'journal' : 'snapshots';
}

function readRows(table: SampleTable, head: Head, phrasebook: Phrasebook, now: number): readonly TriedRow[] {
  const importer = importers.find(({ id }) => id === layoutOf(head));
  if (importer === undefined || missingIn(head).length > 0) return [];
  const cells = timeColumns(head).map((column) => table.rows.map((row) => row.cells[column]?.trim() ?? ''));
  const stamps = (cells[0] ?? []).map((cell, i) => `${cell} ${cells[1]?.[i] ?? ''}`.trim());
  const times = timeReader(
    zoneOf(phrasebook.zone ?? 'UTC', phrasebook.file),
    // What the dates leave open is said beside the column, and not guessed.
    phrasebook.order ?? settledOrder(stamps),
    phrasebook.year ?? now,
    phrasebook.pattern,
  );
  const take = importer.open(head, phrasebook, times);
  const known = understander(phrasebook);
  return table.rows.slice(0, mostRows).map((row) => {
    const said = listener(phrasebook, known, head.rule?.of);
    take(asRow(row, table.delimiter), said.sink);
    return { line: row.line, ...said.result() };
  });
}

function settledOrder(stamps: readonly string[]): DateOrder | undefined {
  const evidence = orderEvidence();
  for (const [i, stamp] of stamps.entries()) evidence.add(stamp, i);
  return evidence.settled()?.order;
}

function asRow({ line, cells }: SampleRow, delimiter: string): Row {
  const text = cells.join(delimiter);
  return {
    line,
    isCut: false,
    cell: (column) => cells[column] ?? '',
    width: () => cells.length,
    text: () => text,
    ownText: () => text,
    putText: (into) => into.add(text),
    keep(kept) {
      kept.text = text;
      kept.bytes = null;
    },
  };
}

/** Hears what one row says. */
function listener(
  phrasebook: Phrasebook,
  known: Understander,
  of: FileSubject | undefined,
): { readonly sink: Sink; readonly result: () => Omit<TriedRow, 'line'> } {
  let time: number | null = null;
  let about: UnitParts = { unit: '', half: '', role: '' };
  let problem: string | null = null;
  const says: { readonly text: string; readonly means: string | null }[] = [];
  const hear = (at: number, parts: UnitParts, text: string, means: string | null): void => {
    time = at;
    about = parts;
    says.push({ text, means });
  };
  const sink: Sink = {
    reading: (at, unit, name, value, parts) =>
      hear(
        at,
        parts ?? bare(unit),
        `${name} = ${value}`,
        sayMeaning(known.value(name, value) ?? known.parameter(name)),
      ),
    entry: (at, unit, message, parts) =>
      hear(at, parts ?? bare(unit), message, sayMeaning(known.message(message))),
    note: (at, pair, _half, text) => hear(at, bare(pair), text, sayMeaning(known.note(text))),
    unread(at, quality) {
      time = at;
      says.push({ text: `quality ${quality}`, means: 'not observed' });
    },
    reject(what) {
      problem = what;
    },
    ignore: () => undefined,
  };
  const result = (): Omit<TriedRow, 'line'> => {
    const { subject } = subjectIn(phrasebook, about, of);
    return {
      time,
      unit: about.unit,
      pair: subject?.pair ?? null,
      half: subject?.half ?? null,
      says: says.slice(0, mostSaid),
      more: Math.max(0, says.length - mostSaid),
      problem,
    };
  };
  return { sink, result };
}

function bare(unit: string): UnitParts {
  return { unit, half: '', role: '' };
}

function sayMeaning(found: ReturnType<Understander['message']>): string | null {
  if (found === null) return null;
  return found.signal === null ? 'ignored' : [found.signal, found.value].filter((w) => w !== null).join(' ');
}
