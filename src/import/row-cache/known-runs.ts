import type { ByteStamps } from './byte-stamps.ts';
import type { KnownRow, KnownRun } from './known-rows.ts';
import type { Piece } from './literal.ts';

/** Rows that come one after the other, as they are found again: they may become a run. */
export interface Streak {
  rows: KnownRow[];
  edges: number[];
  bytes: Uint8Array;
  clock: number;
}

/** So many rows make a run. */
const longestRun = 64;
const wordBytes = 8;
const blockBytes = 4 * wordBytes;
/** Spare bytes of a run, for rows that are longer than those whose place they take. */
const spareBytes = 64;

/** None is begun. */
export function noStreak(): Streak {
  return { rows: [], edges: [], bytes: new Uint8Array(0), clock: Number.NaN };
}

/** Adds a row that ends at `end` to the rows before it, if it follows them under their stamp; else it begins anew. */
export function addToStreak(
  streak: Streak,
  row: KnownRow,
  bytes: Uint8Array,
  from: number,
  end: number,
  stamps: ByteStamps,
): void {
  // Where the piece ends is by chance: rows that end there are no run.
  if (streak.bytes !== bytes) dropStreak(streak);
  const isFree = row.readings.length > 0 && !isInRun(row);
  const isNext = streak.edges.at(-1) === from && streak.clock === stamps.clock() && isFree;
  if (!isNext) endStreak(streak, stamps.length());
  if (!isFree) return;
  if (streak.rows.length === 0) {
    streak.bytes = bytes;
    streak.clock = stamps.clock();
    streak.edges.push(from);
  }
  streak.rows.push(row);
  streak.edges.push(end);
  if (streak.rows.length === longestRun) endStreak(streak, stamps.length());
}

function isInRun(row: KnownRow): boolean {
  return row.run !== null && row.run.rows[row.place] === row;
}

/** No row follows: what there is becomes a run. */
function endStreak(streak: Streak, stampLength: number): void {
  const { rows, edges, bytes } = streak;
  dropStreak(streak);
  if (rows.length >= 2) makeRun(rows, edges, bytes, stampLength);
}

function dropStreak(streak: Streak): void {
  if (streak.rows.length === 0) return;
  streak.rows = [];
  streak.edges = [];
}

function makeRun(rows: KnownRow[], places: readonly number[], piece: Uint8Array, stampLength: number): void {
  const [from = 0] = places;
  const source = piece.subarray(from, places.at(-1));
  if (!canBeCompared(source)) return;
  const bytes = new Uint8Array(source.length + spareBytes);
  bytes.set(source);
  const edges = Int32Array.from(places, (place) => place - from);
  const run: KnownRun = {
    rows,
    together: null,
    calm: 0,
    from: 0,
    line: 0,
    bytes,
    view: new DataView(bytes.buffer),
    edges,
    stamps: Int32Array.from(rows, (row, index) => (edges[index] ?? 0) + row.before.length),
    stampLength,
  };
  for (let place = 0; place < rows.length; place += 1) standsIn(run, place, rows[place]);
}

function standsIn(run: KnownRun, place: number, row: KnownRow | undefined): void {
  if (row === undefined) return;
  row.run = run;
  row.place = place;
}

/** Eight bytes are compared as one number: only of zeros there are two that are equal and not the same. */
function canBeCompared(bytes: Uint8Array): boolean {
  return !bytes.includes(0);
}

/**
 * How many rows of its run, from `row` on, the bytes from `from` up to `to` hold at another instant, which the stamps then
 * have.
 */
export function rowsAgain(row: KnownRow, stamps: ByteStamps, piece: Piece, from: number, to: number): number {
  const { run, place } = row;
  if (run === null || run.rows[place] !== row || run.stampLength !== stamps.length()) return 0;
  const { edges } = run;
  const start = edges[place] ?? 0;
  const end = Math.min(edges[run.rows.length] ?? 0, start + to - from);
  if ((edges[place + 1] ?? 0) > end || !stamps.fits(piece, from + row.before.length)) return 0;
  setStamps(run, piece.bytes, from + row.before.length);
  const same = sameUpTo(run, start, end, piece, from - start);
  if (same === edges[run.rows.length]) return run.rows.length - place;
  let last = place;
  while ((edges[last + 1] ?? 0) <= same) last += 1;
  return last - place;
}

/** Puts a stamp in the place of the one before: only the bytes in which they differ, often one. */
function setStamps({ bytes, stamps, stampLength }: KnownRun, piece: Uint8Array, from: number): void {
  const first = stamps[0] ?? 0;
  let same = 0;
  while (same < stampLength && piece[from + same] === bytes[first + same]) same += 1;
  if (same === stampLength) return;
  let last = stampLength - 1;
  while (piece[from + last] === bytes[first + last]) last -= 1;
  for (let at = same; at <= last; at += 1) {
    const byte = piece[from + at] ?? 0;
    for (let row = 0; row < stamps.length; row += 1) bytes[(stamps[row] ?? 0) + at] = byte;
  }
}

/** Up to where the bytes of a run from `start` to `end` are those of the piece, which stand `by` further on there. */
function sameUpTo(
  { bytes, view: run }: KnownRun,
  start: number,
  end: number,
  { bytes: others, view: piece }: Piece,
  by: number,
): number {
  let at = start;
  // Four at a time: the loop itself would cost as much as what it compares.
  for (; at <= end - blockBytes; at += blockBytes)
    if (
      piece.getFloat64(at + by, true) !== run.getFloat64(at, true) ||
      piece.getFloat64(at + by + 8, true) !== run.getFloat64(at + 8, true) ||
      piece.getFloat64(at + by + 16, true) !== run.getFloat64(at + 16, true) ||
      piece.getFloat64(at + by + 24, true) !== run.getFloat64(at + 24, true)
    )
      break;
  for (; at <= end - wordBytes; at += wordBytes)
    if (piece.getFloat64(at + by, true) !== run.getFloat64(at, true)) break;
  while (at < end && others[at + by] === bytes[at]) at += 1;
  return at;
}

/** Puts a row that came behind another in the place of the row that a run has there. */
export function mendRun(
  before: KnownRow,
  found: KnownRow,
  piece: Uint8Array,
  from: number,
  to: number,
): void {
  const expected = rowBehind(before);
  const run = expected?.run ?? null;
  if (expected === null || run === null || found.readings.length === 0 || isInRun(found)) return;
  const { place } = expected;
  const source = piece.subarray(from, to);
  if (!canBeCompared(source)) return;
  const { edges, stamps, rows, stampLength } = run;
  const [start = 0, behind = 0] = [edges[place], edges[place + 1]];
  const length = edges[rows.length] ?? 0;
  const by = source.length - (behind - start);
  if (length + by > run.bytes.length) growTo(run, length + by + spareBytes);
  const { bytes } = run;
  bytes.copyWithin(behind + by, behind, length);
  bytes.set(source, start);
  for (let index = place + 1; index <= rows.length; index += 1) edges[index] = (edges[index] ?? 0) + by;
  for (let index = place + 1; index < rows.length; index += 1) stamps[index] = (stamps[index] ?? 0) + by;
  stamps[place] = start + found.before.length;
  // All have the same stamp, whatever this one came with.
  const other = stamps[place === 0 ? 1 : 0] ?? 0;
  bytes.copyWithin(stamps[place] ?? 0, other, other + stampLength);
  run.rows[place] = found;
  run.together = null;
  run.calm = 0;
  standsIn(run, place, found);
}

/** The row of a run that follows this one, or that is expected behind it. */
function rowBehind(row: KnownRow): KnownRow | null {
  const { run, place, next } = row;
  const following = run !== null && run.rows[place] === row ? run.rows[place + 1] : undefined;
  if (following !== undefined) return following;
  return next !== null && isInRun(next) ? next : null;
}

function growTo(run: KnownRun, size: number): void {
  const bytes = new Uint8Array(size);
  bytes.set(run.bytes);
  run.bytes = bytes;
  run.view = new DataView(bytes.buffer);
}
