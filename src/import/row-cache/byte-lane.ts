import { isMark, join } from '../bytes/bytes.ts';
import type { TableReader } from '../bytes/csv-rows.ts';
import type { Row } from '../bytes/row.ts';
import type { Said } from '../changes/said.ts';
import type { FileSink } from '../changes/sink.ts';
import type { TimeReader } from '../clock/time-reader.ts';
import { type ByteRow, byteRow } from './byte-row.ts';
import { type ByteStamps, byteStamps } from './byte-stamps.ts';
import { type Cells, endsOfCells, findCells, noCells } from './cells.ts';
import { type KnownPlace, knownPlace, setRow } from './known-place.ts';
import {
  findAmong,
  findRow,
  findWhole,
  isAgain,
  type KnownRow,
  type KnownRows,
  knownRows,
  learnRow,
  type Places,
} from './known-rows.ts';
import { addToStreak, mendRun, noStreak, rowsAgain, type Streak } from './known-runs.ts';
import { type Piece, pieceOf } from './literal.ts';

/** Takes the bytes of a file piece by piece. */
export interface Lane {
  push(piece: Uint8Array): void;
  end(): void;
}

export interface LaneOptions {
  readonly delimiter: number;
  readonly places: Places;
  readonly decode: (bytes: Uint8Array) => string;
  readonly times: TimeReader;
  readonly sink: FileSink;
  /** The general reader: it takes what is irregular. */
  readonly general: TableReader;
  /** Takes a row that is no known one; gives what it said, if a row of the same content would say just that. */
  readonly take: (row: Row) => readonly Said[] | null;
}

interface State extends LaneOptions {
  readonly stamps: ByteStamps;
  readonly known: KnownRows;
  readonly row: ByteRow;
  readonly place: KnownPlace;
  readonly cells: Cells;
  readonly ends: Uint8Array;
  /** Rows come in the order of the poll before. */
  readonly isPeriodic: boolean;
  readonly streak: Streak;
  /** The line that the next row begins on. */
  line: number;
  /** The begin of a line whose end has not come yet. */
  rest: Uint8Array;
  /** The general reader has the begin of that line. */
  isEndless: boolean;
  /** The row before, if it is a known one. */
  before: KnownRow | null;
}

const lineFeed = 10;
/** So much goes to the general reader at once where a row is irregular. */
const blockBytes = 65_536;
const longestLine = 1_048_576;

/**
 * Reads a table as bytes. A row whose bytes, but for stamp and gauges, were read before says what that one said: nothing of
 * it becomes text. Rows come in the order of the poll before, mostly: each row knows the one that followed it. A new row
 * without quotes is split and taken as text; what is irregular goes to the general reader, block by block.
 */
export function byteLane(options: LaneOptions): Lane {
  const isPeriodic = options.places.values.length > 0;
  const stamps = byteStamps(options.times, isPeriodic);
  const state: State = {
    ...options,
    stamps,
    known: knownRows(options.places, stamps, options.delimiter),
    row: byteRow(options.delimiter, options.decode),
    place: knownPlace(byteRow(options.delimiter, options.decode)),
    cells: noCells(),
    ends: endsOfCells(options.delimiter),
    isPeriodic,
    streak: noStreak(),
    line: 1,
    rest: new Uint8Array(0),
    isEndless: false,
    before: null,
  };
  return {
    push: (piece) => takePiece(state, new Uint8Array(piece.buffer, piece.byteOffset, piece.length)),
    end() {
      const { general, decode, line, rest, isEndless } = state;
      if (!isEndless) general.goOnAt(line);
      general.push(decode(line === 1 && isMark(rest) ? rest.subarray(3) : rest));
      general.end();
    },
  };
}

function takePiece(state: State, bytes: Uint8Array): void {
  const first = bytes.indexOf(lineFeed) + 1;
  if (first === 0) {
    state.rest = join(state.rest, bytes);
    if (state.rest.length > longestLine) takeEndless(state);
    return;
  }
  const begun = state.rest.length > 0 || state.isEndless ? first : 0;
  if (begun > 0) {
    state.rest = join(state.rest, bytes.subarray(0, begun));
    if (state.isEndless) takeEndless(state);
    else takeLines(state, pieceOf(state.rest), 0, state.rest.length);
    state.isEndless = false;
  }
  const to = bytes.lastIndexOf(lineFeed) + 1;
  takeLines(state, pieceOf(bytes), begun, to);
  state.rest = bytes.slice(to);
}

/** A line that is longer than any row goes to the general reader as it comes: it keeps the begin of it alone. */
function takeEndless(state: State): void {
  const { general, decode, rest } = state;
  if (!state.isEndless) general.goOnAt(state.line);
  general.push(decode(rest));
  state.line = general.line();
  state.rest = new Uint8Array(0);
  state.isEndless = true;
}

/** Takes whole lines. */
function takeLines(state: State, piece: Piece, from: number, to: number): void {
  const { bytes } = piece;
  const { known, general, stamps } = state;
  let at = state.line === 1 && isMark(bytes) ? 3 : from;
  while (at < to) {
    const next = state.before?.next ?? null;
    const rows = next === null ? 0 : rowsAgain(next, stamps, piece, at, to);
    if (next !== null && rows > 0) at = takeRows(state, next, rows, bytes, at);
    else if (next !== null && isAgain(known, next, piece, at)) at = takeAgain(state, next, bytes, at);
    else at = general.isWaiting() ? takeBlock(state, bytes, at, to) : takeLine(state, piece, at, to);
  }
  settle(state);
}

/** The bytes are about to go: what was kept of them becomes text. */
function settle({ sink, row, place }: State): void {
  sink.settle();
  row.settle();
  place.row.settle();
}

/** Takes so many rows of a run, from one of them on, that were just found again; gives where the next begins. */
function takeRows(state: State, first: KnownRow, rows: number, bytes: Uint8Array, at: number): number {
  const { known, row, sink, stamps, place } = state;
  const { run } = first;
  if (run === null) return at;
  const time = stamps.take(rows);
  place.bytes = bytes;
  place.first = first.place;
  place.end = first.place + rows;
  place.from = at - (run.edges[place.first] ?? 0);
  place.line = state.line - place.first;
  if (!sink.unchanged(run, time, place))
    for (let index = place.first; index < place.end; index += 1) {
      setRow(row, place, run, index);
      sink.again(row, time, run.rows[index]?.said ?? [], known.numbers);
    }
  state.before = run.rows[place.end - 1] ?? null;
  state.line += rows;
  return place.from + (run.edges[place.end] ?? 0);
}

/** Takes a row that was just found again; gives where the next begins. */
function takeAgain(state: State, found: KnownRow, bytes: Uint8Array, at: number): number {
  const { known, row, sink, stamps } = state;
  row.set(bytes, at, known.end, state.line);
  sink.again(row, stamps.take(), found.said, known.numbers);
  state.line += 1;
  goOnFrom(state, found, bytes, at, known.end);
  return known.end;
}

/** Takes one line that is not the row expected. */
function takeLine(state: State, piece: Piece, at: number, to: number): number {
  const { bytes } = piece;
  const { known, row, cells, stamps, places } = state;
  const whole = findWhole(known, piece, at);
  if (whole !== null) return takeAgain(state, whole, bytes, at);
  const end = findCells(bytes, at, state.ends, cells);
  if (end < 0) return takeBlock(state, bytes, at, to);
  const found = findAmong(known, piece, at, cells);
  if (found !== null) return takeAgain(state, found, bytes, at);
  row.set(bytes, at, end, state.line);
  state.line += 1;
  if (row.isBlank()) return end;
  const said = state.take(row);
  if (said === null || cells.count <= places.stampLast) return end;
  const [stampAt, stampEnd] = [cells.from[places.stampFirst] ?? 0, cells.to[places.stampLast] ?? 0];
  // Where the stamp is as they were the row is new; with another day it may be one that is known.
  const isUsual = stampEnd - stampAt === stamps.length() && stamps.fits(piece, stampAt);
  const isStamp = isUsual || stamps.learn(bytes, stampAt, stampEnd);
  const again = isStamp && !isUsual ? findRow(known, piece, at, cells) : null;
  const learnt = isStamp ? (again ?? learnRow(known, said, piece, at, end, cells)) : null;
  if (learnt === null) state.before = null;
  else goOnFrom(state, learnt, bytes, at, end);
  return end;
}

/** The next row is expected to be the one that followed this one the time before. */
function goOnFrom(state: State, row: KnownRow, bytes: Uint8Array, at: number, end: number): void {
  const { before, isPeriodic, streak, stamps } = state;
  if (!isPeriodic) return;
  if (before !== null) {
    mendRun(before, row, bytes, at, end);
    if (before.next !== row) before.next = row;
  }
  addToStreak(streak, row, bytes, at, end, stamps);
  state.before = row;
}

/** Gives a block of whole lines to the general reader; what it can not end goes on with the next. */
function takeBlock(state: State, bytes: Uint8Array, at: number, to: number): number {
  const { general, decode } = state;
  const last = bytes.lastIndexOf(lineFeed, Math.min(to, at + blockBytes) - 1);
  const end = last < at ? bytes.indexOf(lineFeed, at) + 1 : last + 1;
  settle(state);
  // Where it waits for the end of a row it has counted on by itself.
  if (!general.isWaiting()) general.goOnAt(state.line);
  general.push(decode(bytes.subarray(at, end)));
  state.line = general.line();
  state.before = null;
  return end;
}
