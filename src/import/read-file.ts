import type { ImportedFile, Input, Notice } from '../vocabulary.ts';
import { csvRows, type RowReader } from './csv-rows.ts';
import { dateText, orderEvidence } from './date-order.ts';
import { detectEncoding, type Encoding } from './decode.ts';
import { timeColumns } from './head.ts';
import type { Row } from './importer.ts';
import { InputError } from './input-error.ts';
import { fitsGlob } from './patterns.ts';
import type { FileRule, Phrasebook } from './phrasebook.ts';
import { type Plan, recognise } from './recognise.ts';
import { type FileSink, fileSink } from './sink.ts';
import { textLines } from './text-lines.ts';
import { type DateOrder, type TimeReader, timeReader } from './timestamps.ts';
import { type Zone, zoneOf } from './zones.ts';

/** A file, or a member of an archive. It can be opened more than once. */
export interface FileSource {
  readonly name: string;
  readonly bytes: number;
  readonly container?: { readonly file: string; readonly sha256: string };
  open(): AsyncIterable<Uint8Array>;
}

export interface Hasher {
  update(bytes: Uint8Array): void;
  /** Lower-case hexadecimal. */
  digest(): string;
}

export interface ImportOptions {
  readonly phrasebook: Phrasebook;
  /** What the user says; `null` leaves it to the phrasebook and the file. */
  readonly zone: string | null;
  readonly order: DateOrder | null;
  readonly year: number | null;
  /** Milliseconds UTC of a day that the other files speak of, for notes without a date and stamps without a year. */
  readonly neighbour: number | null;
  readonly sha256: () => Hasher;
  readonly onProgress?: (bytes: number, rows: number) => void;
}

const headBytes = 65_536;

/**
 * Reads one file to its changes, in one pass over its bytes and without keeping its rows. Throws InputError if nothing
 * of it can be used; whatever is less is a notice and a count.
 */
export async function readFile(source: FileSource, options: ImportOptions): Promise<ImportedFile> {
  const { phrasebook } = options;
  const head = await readHead(source);
  if (head.length === 0) throw new InputError(source.name, 'the file is empty.', 'Export it again.');
  const encoding = detectEncoding(head);
  if (encoding === null) throw new InputError(source.name, 'this is no text but a binary file.', 'Export it as CSV or text.');
  const text = new TextDecoder(encoding.label).decode(head, { stream: true });
  const rule = phrasebook.files.find((r) => fitsGlob(r.match, baseName(source.name)));
  const plan = recognise(source.name, text, rule, phrasebook);
  const order = await settleOrder(source, encoding, plan, options);
  const zone = chooseZone(source.name, options);
  const times = timeReader(zone.zone, order.order, yearOf(options));
  if (options.neighbour !== null) times.setDay(Math.floor(options.neighbour / dayMs) * dayMs);
  const sink = fileSink(phrasebook);
  const done = await readRows(source, encoding, plan, sink, times, options);
  return assemble(source, options, { encoding, plan, order: order.because, zone, times, sink, ...done }, rule);
}

const dayMs = 86_400_000;

function baseName(name: string): string {
  return name.split(/[/\\]/).at(-1) ?? name;
}

async function readHead(source: FileSource): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  let length = 0;
  for await (const piece of source.open()) {
    pieces.push(piece);
    length += piece.length;
    if (length >= headBytes) break;
  }
  const head = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    head.set(piece, at);
    at += piece.length;
  }
  return head.subarray(0, headBytes);
}

function yearOf({ year, phrasebook, neighbour }: ImportOptions): number | undefined {
  return year ?? phrasebook.year ?? (neighbour === null ? undefined : new Date(neighbour).getUTCFullYear());
}

interface ChosenZone {
  readonly zone: Zone;
  readonly because: string;
  readonly assumed: boolean;
}

function chooseZone(name: string, { zone, phrasebook }: ImportOptions): ChosenZone {
  if (zone !== null) return { zone: zoneOf(zone, '--zone'), because: '--zone says so', assumed: false };
  if (phrasebook.zone !== undefined) {
    return { zone: zoneOf(phrasebook.zone, phrasebook.file), because: 'the phrasebook says so', assumed: false };
  }
  return { zone: zoneOf('UTC', name), because: 'nothing names a zone', assumed: true };
}

interface ChosenOrder {
  readonly order: DateOrder | undefined;
  readonly because: string | null;
}

/** The day/month order: what the user or the phrasebook says, else what the dates of the whole file settle. */
async function settleOrder(source: FileSource, encoding: Encoding, plan: Plan, options: ImportOptions): Promise<ChosenOrder> {
  const given = options.order ?? options.phrasebook.order;
  if (given !== undefined && given !== null) {
    return { order: given, because: options.order === null ? 'the phrasebook says so' : '--order says so' };
  }
  const evidence = orderEvidence();
  const columns = plan.importer.shape === 'table' ? timeColumns(plan.head) : [];
  const rows = rowReader(plan, (row) => evidence.add(dateText(row, columns), row.line));
  const decoder = new TextDecoder(encoding.label);
  let seen = 0;
  for await (const bytes of source.open()) {
    rows.push(decoder.decode(bytes, { stream: true }));
    seen += bytes.length;
    // Without a date that can be read both ways in the head, or once one settles it, the rest need not be read twice.
    if (evidence.settled() !== undefined || (seen >= headBytes && !evidence.isOpen())) break;
  }
  rows.end();
  const settled = evidence.settled();
  if (settled !== undefined) return { order: settled.order, because: `"${settled.text}" in line ${settled.line} can be read no other way` };
  const example = evidence.example();
  if (example === undefined || !evidence.isOpen()) return { order: undefined, because: null };
  const { text, line, first, second, year } = example;
  throw new InputError(
    `${source.name}:${line}`,
    `"${text}" is ${first} ${monthName(second)} ${year} if the day comes first, ${second} ${monthName(first)} ${year} if the month does, and no date in the file settles it.`,
    'Choose with --order day-first or --order month-first.',
  );
}

function monthName(month: number): string {
  return ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'][month - 1] ?? String(month);
}

function rowReader(plan: Plan, onRow: (row: Row) => void): RowReader {
  return plan.delimiter === null ? textLines(onRow) : csvRows(plan.delimiter, onRow);
}

interface Done {
  readonly sha256: string;
  readonly bytes: number;
  readonly endsInRow: boolean;
}

async function readRows(
  source: FileSource,
  encoding: Encoding,
  plan: Plan,
  sink: FileSink,
  times: TimeReader,
  options: ImportOptions,
): Promise<Done> {
  const take = plan.importer.open(plan.head, options.phrasebook, times);
  let rowCount = 0;
  const rows = rowReader(plan, (row) => {
    if (row.line <= plan.headerLine) return;
    if (plan.delimiter === null && row.text().trim() === '') return;
    rowCount += 1;
    sink.begin(row);
    if (plan.headerLine > 0 && isHeaderAgain(row, plan.head.names)) sink.ignore();
    else take(row, sink);
    sink.finish();
  });
  const hasher = options.sha256();
  const decoder = new TextDecoder(encoding.label);
  let bytes = 0;
  let last = '\n';
  for await (const piece of source.open()) {
    hasher.update(piece);
    bytes += piece.length;
    const text = decoder.decode(piece, { stream: true });
    if (text !== '') last = text.charAt(text.length - 1);
    rows.push(text);
    options.onProgress?.(bytes, rowCount);
  }
  rows.push(decoder.decode());
  rows.end();
  return { sha256: hasher.digest(), bytes, endsInRow: last !== '\n' };
}

function isHeaderAgain(row: Row, names: readonly string[]): boolean {
  return row.width() === names.length && names.every((name, index) => row.cell(index).trim() === name);
}

interface Parts extends Done {
  readonly encoding: Encoding;
  readonly plan: Plan;
  readonly order: string | null;
  readonly zone: ChosenZone;
  readonly times: TimeReader;
  readonly sink: FileSink;
}

function assemble(source: FileSource, options: ImportOptions, parts: Parts, rule: FileRule | undefined): ImportedFile {
  const { plan, encoding, zone, times, sink } = parts;
  const { streams, changes, gauges, notices, rows, unmatched, units } = sink.result(source.name, parts.endsInRow);
  refuseUseless(source.name, plan, rows, notices);
  const points = streams.flatMap((s) => (s.subject.pair === '' ? [] : [s.first.time, s.last.time]));
  const span = extent(points);
  const input: Input = {
    file: source.name,
    sha256: parts.sha256,
    bytes: parts.bytes,
    ...(source.container === undefined ? {} : { container: source.container }),
    layout: plan.importer.id,
    encoding: encoding.label,
    delimiter: plan.delimiter,
    zone: times.usedZone() ? zone.zone.name : 'UTC',
    rows,
    from: span?.from ?? null,
    to: span?.to ?? null,
    units,
    unmatched,
  };
  return {
    input,
    resolution: times.hasDecimals() ? 0 : 1000,
    site: options.phrasebook.site,
    streams,
    changes,
    gauges,
    notices: [...notices, ...clockNotices(source.name, zone, times, streams[0]?.first)],
    reasons: reasonsOf(parts, rule),
  };
}

function extent(points: readonly number[]): { from: number; to: number } | undefined {
  if (points.length === 0) return undefined;
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (const point of points) {
    from = Math.min(from, point);
    to = Math.max(to, point);
  }
  return { from, to };
}

function refuseUseless(name: string, plan: Plan, rows: Input['rows'], notices: readonly Notice[]): void {
  if (rows.read === 0) {
    const what = plan.headerLine > 0 ? 'the file has a header but no rows.' : 'the file has no lines to read.';
    throw new InputError(name, what, 'Export it again over a longer time.');
  }
  const rejected = notices.find((n) => n.id === 'rejected-rows' || n.id === 'damaged-tail');
  if (rows.rejected === rows.read && rejected !== undefined) {
    throw new InputError(`${name}:${rejected.lines[0].line}`, `no row could be read: ${rejected.what}`, rejected.fix);
  }
}

function clockNotices(
  file: string,
  zone: ChosenZone,
  times: TimeReader,
  first: { readonly line: number; readonly text: string } | undefined,
): readonly Notice[] {
  if (first === undefined) return [];
  const lines = [{ file, line: first.line, text: first.text }] as const;
  const frame = { from: null, to: null, lines };
  const { repeated, missing } = times.folds();
  const notices: Notice[] = [];
  if (zone.assumed && times.usedZone()) {
    notices.push({ ...frame, id: 'zone-assumed', what: 'Its stamps name no zone; they were read as UTC.', fix: 'Give the zone with --zone or in the phrasebook.', count: 1 });
  }
  if (repeated > 0) {
    notices.push({ ...frame, id: 'clock-fold', what: `${repeated} stamps stand in the hour that the clocks repeat; the order of the rows decided which.`, fix: 'Check them against another source.', count: repeated });
  }
  if (missing > 0) {
    notices.push({ ...frame, id: 'clock-fold', what: `${missing} stamps stand in the hour that the clocks leave out.`, fix: 'Check the zone.', count: missing });
  }
  return notices;
}

function reasonsOf({ plan, encoding, zone, times, order }: Parts, rule: FileRule | undefined): readonly string[] {
  const ruled = rule === undefined ? '' : ` (phrasebook rule for ${rule.match})`;
  const names: Readonly<Record<string, string>> = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'pipe' };
  return [
    `Read as ${plan.importer.id}${ruled}: ${plan.because}.`,
    ...(plan.headerLine > 1 ? [`The header stands in line ${plan.headerLine}; what comes before it is preamble.`] : []),
    `Encoding ${encoding.label}: ${encoding.because}.`,
    ...(plan.delimiter === null ? [] : [`Columns are parted by ${names[plan.delimiter] ?? plan.delimiter}.`]),
    times.usedZone() ? `Zone ${zone.zone.name}: ${zone.because}.` : 'The stamps say their instant themselves.',
    ...(order === null ? [] : [`Order of day and month: ${order}.`]),
  ];
}
