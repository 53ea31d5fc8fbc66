import { csvRows } from './bytes/csv-rows.ts';
import { eachChunk } from './bytes/damaged-end.ts';
import { type Encoding, foreignWatch } from './bytes/decode.ts';
import type { FileSource } from './bytes/file-source.ts';
import { type OpenRows, rowReader } from './bytes/open-rows.ts';
import type { Row } from './bytes/row.ts';
import { noZeroBytes, type ZeroBytes } from './bytes/zero-bytes.ts';
import { fileSink } from './changes/file-sink.ts';
import { checkMemoryBudget } from './changes/memory-budget.ts';
import type { Recorded } from './changes/recorded.ts';
import { rowInstant } from './changes/row-instant.ts';
import type { ClosedSink, FileSink, Sink } from './changes/sink.ts';
import { type SinkState, sinkState } from './changes/sink-state.ts';
import type { ClockStep } from './clock/clock-order.ts';
import { rowSorter } from './clock/sorted-rows.ts';
import type { TimeReader } from './clock/time-reader.ts';
import type { Done } from './describe-file.ts';
import type { ImportOptions } from './import-options.ts';
import { timeColumns } from './layouts/head.ts';
import type { Importer, TableImporter } from './layouts/importer.ts';
import { type Plan, shapeOf } from './layouts/recognise.ts';
import { noRecords } from './layouts/unknown-layout.ts';
import type { Phrasebook } from './phrasebook/phrasebook-rules.ts';
import { byteLane } from './row-cache/byte-lane.ts';
import type { Lane } from './row-cache/lane.ts';
import { replayInto } from './row-cache/replay.ts';
import type { ColumnPlaces } from './row-cache/row-template.ts';

/** What is read, and how; with `steps` the rows are sorted, but not across those steps of the clock. */
export interface Reading {
  readonly source: FileSource;
  readonly encoding: Encoding;
  readonly plan: Plan;
  readonly clock: () => TimeReader;
  readonly options: ImportOptions;
  readonly steps: readonly ClockStep[] | null;
  /** Names that look like one of a pair, and were found to be none. */
  readonly refusedPairs: ReadonlySet<string>;
}

/** What the rows of a file came to in one pass over its bytes. */
export interface RowsRead {
  readonly sink: ClosedSink;
  readonly times: TimeReader;
  readonly seconds: ReadonlySet<number>;
  readonly zeros: ZeroBytes;
  /** It holds bytes that are no UTF-8. */
  readonly isForeign: boolean;
}

/** One pass over the rows of a file, with what its bytes are. */
export interface Passed extends RowsRead, Done {}

/** A pass over the rows of a file that is fed with its bytes, chunk by chunk from the first on. */
export interface OpenPass {
  push(chunk: Uint8Array): void;
  /** How many rows there were so far, and what they take of the budget of memory. */
  rows(): number;
  taken(): number;
  /**
   * After whole lines: what the rows so far come to, as if no more followed, while more may. `isWaiting`: an open quote keeps
   * lines back. It must be used before more is pushed.
   */
  soFar(): RowsRead & { readonly isWaiting: boolean };
  /** True once something came that changes what was taken for whole then: only a pass from the beginning gives what all of it comes to. */
  isOutdated(): boolean;
  /** No byte follows. */
  end(): RowsRead;
}

/** How many rows wait to be sorted: one that is further out of order is no stray row. */
const sortWindow = 200_000;

/** Reads the rows of a file once, to the end of its bytes. */
export async function readRows(reading: Reading): Promise<Passed> {
  const { source, options } = reading;
  const pass = openPass(reading);
  const hasher = options.sha256(source);
  let bytes = 0;
  let hashing: Promise<void> = Promise.resolve();
  const damage = await eachChunk(source, async (chunk) => {
    const before = hashing;
    hashing = Promise.resolve(hasher.update(chunk));
    // An error there is thrown when the memory of the chunk is about to be used again.
    hashing.catch(() => undefined);
    bytes += chunk.length;
    pass.push(chunk);
    checkMemoryBudget(source.name, pass.taken(), options);
    options.onProgress?.(bytes, pass.rows());
    await before;
    return true;
  });
  const read = pass.end();
  const sha256 = await hasher.digest();
  return { ...read, sha256, bytes, damage };
}

/** Begins a pass over the rows of a file. */
export function openPass(reading: Reading): OpenPass {
  const { source, encoding, plan, clock, options, steps } = reading;
  const { phrasebook, used = new Set(), knownPairs = new Set() } = options;
  const state = sinkState(
    phrasebook,
    { name: source.name, rule: plan.head.rule, used },
    { knownPairs, refusedPairs: reading.refusedPairs, hasPairColumn: plan.head.column('pair') >= 0 },
  );
  const sink = fileSink(state);
  const times = clock();
  const watch = foreignWatch();
  const put = rowTaker(reading, sink, times);
  const zeros = noZeroBytes();
  const sorter =
    steps === null
      ? null
      : rowSorter(rowInstant(opened(reading, clock())), sortWindow, new Set(steps.map((s) => s.line)), put);
  const rows = rowReader(shapeOf(plan), whereData(plan, sorter?.add ?? put), zeros);
  const lane =
    (sorter === null ? laneOf(reading, state, times, put, zeros, watch.see) : null) ??
    textLane(rows, encoding, watch.see);
  const read = (closed: ClosedSink): RowsRead => {
    if (!rows.hasRecords()) throw noRecords(source.name, plan.head.rule);
    const seconds = sorter?.secondExports() ?? new Set<number>();
    return { isForeign: watch.isForeign(), zeros, sink: closed, times, seconds };
  };
  return {
    push: lane.push,
    rows: sink.rows,
    taken: sink.taken,
    soFar() {
      const isWaiting = !lane.settle();
      sorter?.settle();
      return { ...read(sink.soFar()), isWaiting };
    },
    isOutdated: () => rows.wentOn() || sorter?.isLate() === true,
    end() {
      lane.end();
      sorter?.end();
      return read(sink.close());
    },
  };
}

/** Takes a data row; gives what is recorded of it, if a row of the same content would give just that. */
type RowTaker = (row: Row) => readonly Recorded[] | null;

function opened({ plan, options }: Reading, times: TimeReader): ReturnType<Importer['open']> {
  return plan.importer.open(plan.head, options.phrasebook, times);
}

function rowTaker(reading: Reading, sink: FileSink, times: TimeReader): RowTaker {
  const { plan } = reading;
  const take = opened(reading, times);
  const { importer } = plan;
  const isRecorded = importer.shape === 'table';
  const read = (row: Row, into: Sink): void => {
    if (plan.hasHeader && isHeaderAgain(row, plan.head.names)) into.ignore();
    else if (plan.delimiter !== null && isTooWide(row, plan.head.names.length)) rejectWide(row, plan, into);
    else take(row, into);
  };
  return (row) => sink.take(row, read, isRecorded);
}

/** Hands on the rows that hold data: neither header nor preamble, nor the blank lines of a text. */
function whereData<T>(plan: Plan, take: (row: Row) => T): (row: Row) => T | null {
  return (row) => {
    const isData = row.line > plan.headerLine && (plan.delimiter !== null || row.text().trim() !== '');
    return isData ? take(row) : null;
  };
}

/** The general lane: all bytes become text. */
function textLane(rows: OpenRows, encoding: Encoding, see: (text: string) => string): Lane {
  const decoder = new TextDecoder(encoding.label);
  return {
    push: (chunk) => rows.push(see(decoder.decode(chunk, { stream: true }))),
    settle: rows.settle,
    end() {
      rows.push(see(decoder.decode()));
      rows.end();
    },
  };
}

/** The fast lane, for tables in an encoding whose delimiters and line ends are single bytes; `null` for all else. */
function laneOf(
  { plan, encoding, options }: Reading,
  state: SinkState,
  times: TimeReader,
  put: RowTaker,
  zeros: ZeroBytes,
  see: (text: string) => string,
): Lane | null {
  const { delimiter, importer, head } = plan;
  const isSingleByte = encoding.label === 'utf-8' || encoding.label === 'windows-1252';
  if (delimiter === null || importer.shape === 'text') return null;
  if (!isSingleByte || options.isGeneralOnly === true) return null;
  // A byte order mark is dropped where the file begins, not where a line does.
  const decoder = new TextDecoder(encoding.label, { ignoreBOM: true });
  // Node 20 reads 80 to 9F of Windows-1252 rightly only as a stream; with one byte for a character that makes no other difference.
  const stream = encoding.label !== 'utf-8';
  const take = whereData(plan, put);
  return byteLane({
    delimiter: delimiter.charCodeAt(0),
    places: placesOf(importer, head, options.phrasebook),
    decode: (bytes) => see(decoder.decode(bytes, { stream })),
    times,
    replay: replayInto(state),
    general: csvRows(delimiter, take, zeros),
    take,
  });
}

/** Where the stamp and the values stand; past all cells where the stamp is in two places, so that no row is known. */
function placesOf(importer: TableImporter, head: Plan['head'], phrasebook: Phrasebook): ColumnPlaces {
  const [first = 0, last = first] = timeColumns(head);
  const isOne = last === first || last === first + 1;
  return {
    stampFirst: first,
    stampLast: isOne ? last : Number.MAX_SAFE_INTEGER,
    values: importer.values(head, phrasebook),
    message: importer.columns.required.includes('message') ? head.column('message') : -1,
  };
}

/** Delimiters at the end of a row add nothing; text past the last column does, and where it belongs is not known. */
function isTooWide(row: Row, columns: number): boolean {
  for (let column = columns; column < row.width(); column += 1)
    if (row.cell(column).trim() !== '') return true;
  return false;
}

function rejectWide(row: Row, { head, delimiter }: Plan, sink: Sink): void {
  sink.reject(
    `The row has ${row.width()} columns, the header ${head.names.length}.`,
    `Quote a cell that contains "${delimiter}", or export the rows with other columns separately.`,
  );
}

function isHeaderAgain(row: Row, names: readonly string[]): boolean {
  return row.width() === names.length && names.every((name, index) => row.cell(index).trim() === name);
}
