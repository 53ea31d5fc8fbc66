import type { RecordedEntry } from '../changes/recorded.ts';
import type { Cells } from './cells.ts';
import type { Chunk } from './chunk.ts';

/** A row of a journal as it is after its stamp, a 0 for each digit of its message, and what was found in it. */
interface ShapedRow {
  readonly entry: RecordedEntry;
  readonly bytes: Uint8Array;
}

/** Rows of a journal in which the digits of the message make no difference: many messages hold a number of their own. */
export interface ShapeStore {
  /** The column of the message; -1 where rows are no entries. */
  readonly message: number;
  readonly rows: Map<number, ShapedRow>;
  used: number;
}

/** So many bytes of such rows are kept. Chosen here. */
const mostBytes = 4_000_000;
const [zero, nine] = [48, 57];

/** No row yet. */
export function shapeStore(message: number): ShapeStore {
  return { message, rows: new Map(), used: 0 };
}

/** What was found in a row that is this one from `from` to `to` but for the digits of its message; `null` if none is known. */
export function findShape(
  { message, rows }: ShapeStore,
  { bytes }: Chunk,
  from: number,
  to: number,
  cells: Cells,
): RecordedEntry | null {
  if (message < 0 || message >= cells.count || rows.size === 0) return null;
  const known = rows.get(keyOf(bytes, from, to, cells, message));
  if (known === undefined || known.bytes.length !== to - from) return null;
  const [first, end] = [cells.from[message] ?? 0, cells.to[message] ?? 0];
  for (let at = from; at < to; at += 1) {
    const byte = bytes[at] ?? 0;
    const shaped = at >= first && at < end && isDigit(byte) ? zero : byte;
    if (shaped !== known.bytes[at - from]) return null;
  }
  return known.entry;
}

/** What was found in the row that was found last: its own words count where no rule fits them. */
export function shapedEntry(
  { message }: ShapeStore,
  entry: RecordedEntry,
  { bytes }: Chunk,
  cells: Cells,
  decode: (bytes: Uint8Array) => string,
): RecordedEntry {
  if (entry.found !== 'message') return entry;
  return { ...entry, message: decode(bytes.subarray(cells.from[message], cells.to[message])) };
}

/** Keeps a row that stands from `from` to `to` after its stamp, unless there is no room for it. */
export function addShape(
  store: ShapeStore,
  entry: RecordedEntry,
  { bytes }: Chunk,
  from: number,
  to: number,
  cells: Cells,
): void {
  const { message, rows, used } = store;
  if (message < 0 || message >= cells.count || used + to - from > mostBytes) return;
  const own = bytes.slice(from, to);
  const [first, end] = [cells.from[message] ?? 0, cells.to[message] ?? 0];
  for (let at = first; at < end; at += 1) if (isDigit(bytes[at] ?? 0)) own[at - from] = zero;
  rows.set(keyOf(bytes, from, to, cells, message), { entry, bytes: own });
  store.used += own.length;
}

function keyOf(bytes: Uint8Array, from: number, to: number, cells: Cells, message: number): number {
  const [first, end] = [cells.from[message] ?? 0, cells.to[message] ?? 0];
  let hash = to - from;
  for (let at = from; at < to; at += 1) {
    const byte = bytes[at] ?? 0;
    const shaped = at >= first && at < end && isDigit(byte) ? zero : byte;
    hash = Math.imul(hash ^ shaped, 16_777_619);
  }
  // A small integer needs no object of its own.
  return hash & 0x3fff_ffff;
}

function isDigit(byte: number): boolean {
  return byte >= zero && byte <= nine;
}
