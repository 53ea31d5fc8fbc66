import type { ByteStamps } from './byte-stamps.ts';
import type { KnownRow, KnownRun } from './known-rows.ts';
import type { Piece } from './literal.ts';

/** Rows that come one after the other, as they are found again: they may become a run. */
export interface Streak {
  rows: KnownRow[];
  edges: number[];
  bytes: Uint8Array;
  clock: number;
  runs: number;
}

/** So many rows make a run: one that changes costs the reading of all of them one by one. */
const longestRun = 64;
/** More would cost memory, and no site has so many controllers. */
const mostRuns = 4096;
const wordBytes = 8;

/** None is begun. */
export function noStreak(): Streak {
  return { rows: [], edges: [], bytes: new Uint8Array(0), clock: Number.NaN, runs: 0 };
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
  const isNext = streak.edges.at(-1) === from && streak.clock === stamps.clock() && row.readings.length > 0;
  if (!isNext) endStreak(streak, stamps.length());
  if (row.readings.length === 0) return;
  if (streak.rows.length === 0) {
    streak.bytes = bytes;
    streak.clock = stamps.clock();
    streak.edges.push(from);
  }
  streak.rows.push(row);
  streak.edges.push(end);
  if (streak.rows.length === longestRun) endStreak(streak, stamps.length());
}

/** No row follows: what there is becomes a run. */
function endStreak(streak: Streak, stampLength: number): void {
  const { rows, edges, bytes, runs } = streak;
  const [first] = rows;
  dropStreak(streak);
  if (first === undefined || rows.length < 2 || (first.run === null && runs >= mostRuns)) return;
  const made = runOf(rows, edges, bytes, stampLength, first.run);
  if (first.run === null && made !== null) streak.runs += 1;
  first.run = made;
}

function dropStreak(streak: Streak): void {
  if (streak.rows.length === 0) return;
  streak.rows = [];
  streak.edges = [];
}

function runOf(
  rows: readonly KnownRow[],
  places: readonly number[],
  piece: Uint8Array,
  stampLength: number,
  before: KnownRun | null,
): KnownRun | null {
  const [from = 0] = places;
  const source = piece.subarray(from, places.at(-1));
  const { length } = source;
  // Eight bytes are compared as one number: only of zeros there are two that are equal and not the same.
  if (length < wordBytes || source.includes(0)) return null;
  // The memory of the run that stood here is used again: much that changes makes many runs.
  const hasRoom = before !== null && before.bytes.length >= length;
  const bytes = hasRoom ? before.bytes : new Uint8Array(length);
  const view = hasRoom ? before.view : new DataView(bytes.buffer);
  bytes.set(source);
  const edges = places.map((place) => place - from);
  const stamps = Int32Array.from(rows, (row, index) => (edges[index] ?? 0) + row.before.length);
  return { rows, together: null, from: 0, line: 0, bytes, view, length, edges, stamps, stampLength };
}

/**
 * The run that begins with a row, if the bytes from `from` up to `to` begin with it at another instant, which the stamps then
 * have; else `null`. A streak goes first while its stamp lasts: else a run that was cut short once would never grow again.
 */
export function runAgain(
  row: KnownRow,
  streak: Streak,
  stamps: ByteStamps,
  piece: Piece,
  from: number,
  to: number,
): KnownRun | null {
  if (row.run === null || from + row.run.length > to || row.run.stampLength !== stamps.length()) return null;
  const stampFrom = from + row.before.length;
  if (!stamps.fits(piece, stampFrom)) return null;
  if (streak.rows.length > 0) {
    if (streak.bytes !== piece.bytes) dropStreak(streak);
    else if (streak.clock === stamps.clock()) return null;
    else endStreak(streak, row.run.stampLength);
  }
  // The streak may just have become the run of this very row.
  const { run } = row;
  if (run === null || from + run.length > to) return null;
  setStamps(run, piece.bytes, stampFrom);
  return isSame(run, piece.view, from) ? run : null;
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

function isSame({ view: run, length }: KnownRun, piece: DataView, from: number): boolean {
  const last = length - wordBytes;
  let at = 0;
  // Four at a time: the loop itself would cost as much as what it compares.
  for (; at <= length - 4 * wordBytes; at += 4 * wordBytes)
    if (
      piece.getFloat64(from + at, true) !== run.getFloat64(at, true) ||
      piece.getFloat64(from + at + 8, true) !== run.getFloat64(at + 8, true) ||
      piece.getFloat64(from + at + 16, true) !== run.getFloat64(at + 16, true) ||
      piece.getFloat64(from + at + 24, true) !== run.getFloat64(at + 24, true)
    )
      return false;
  for (; at < last; at += wordBytes)
    if (piece.getFloat64(from + at, true) !== run.getFloat64(at, true)) return false;
  return piece.getFloat64(from + last, true) === run.getFloat64(last, true);
}
