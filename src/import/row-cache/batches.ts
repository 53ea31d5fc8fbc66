import type { ByteStamps } from './byte-stamps.ts';
import type { Chunk } from './chunk.ts';
import type { Batch, RowTemplate } from './row-template.ts';

/** Known rows as they follow each other: they may become a batch. */
export interface BatchBuilder {
  rows: RowTemplate[];
  edges: number[];
  bytes: Uint8Array;
  clock: number;
}

/** So many rows make a batch. */
const longestBatch = 64;
/** So many readings make a batch of one row. */
const wideRow = 8;
const wordBytes = 8;
const blockBytes = 4 * wordBytes;
/** Spare bytes of a batch, for rows that are longer than those whose place they take. */
const spareBytes = 64;

/** No row yet. */
export function batchBuilder(): BatchBuilder {
  return { rows: [], edges: [], bytes: new Uint8Array(0), clock: Number.NaN };
}

/** Adds a row that ends at `end` to the rows before it, if it follows them under their stamp; else it starts with this one. */
export function addToBatch(
  builder: BatchBuilder,
  row: RowTemplate,
  bytes: Uint8Array,
  from: number,
  end: number,
  stamps: ByteStamps,
): void {
  // Where a chunk ends is chance: rows that end there are no batch.
  if (builder.bytes !== bytes) dropRows(builder);
  const isFree = row.readings.length > 0 && !isInBatch(row);
  const isNext = builder.edges.at(-1) === from && builder.clock === stamps.clock() && isFree;
  if (!isNext) endBatch(builder, stamps.length());
  if (!isFree) return;
  if (builder.rows.length === 0) {
    builder.bytes = bytes;
    builder.clock = stamps.clock();
    builder.edges.push(from);
  }
  builder.rows.push(row);
  builder.edges.push(end);
  if (builder.rows.length === longestBatch) endBatch(builder, stamps.length());
}

function isInBatch(row: RowTemplate): boolean {
  return row.batch !== null && row.batch.rows[row.place] === row;
}

/** No row follows: what there is becomes a batch. */
function endBatch(builder: BatchBuilder, stampLength: number): void {
  const { rows, edges, bytes } = builder;
  dropRows(builder);
  if (rows.length >= 2 || holdsMany(rows[0])) makeBatch(rows, edges, bytes, stampLength);
}

/** A row of a wide table holds as much as many rows of a narrow one. */
function holdsMany(row: RowTemplate | undefined): boolean {
  return row !== undefined && row.readings.length >= wideRow;
}

function dropRows(builder: BatchBuilder): void {
  if (builder.rows.length === 0) return;
  builder.rows = [];
  builder.edges = [];
}

function makeBatch(
  rows: RowTemplate[],
  places: readonly number[],
  chunk: Uint8Array,
  stampLength: number,
): void {
  const [from = 0] = places;
  const source = chunk.subarray(from, places.at(-1));
  if (!canBeCompared(source)) return;
  const bytes = new Uint8Array(source.length + spareBytes);
  bytes.set(source);
  const edges = Int32Array.from(places, (place) => place - from);
  const batch: Batch = {
    rows,
    time: null,
    timesUnchanged: 0,
    from: 0,
    line: 0,
    bytes,
    view: new DataView(bytes.buffer),
    edges,
    stamps: Int32Array.from(rows, (row, index) => (edges[index] ?? 0) + row.before.length),
    stampLength,
  };
  for (let place = 0; place < rows.length; place += 1) standsIn(batch, place, rows[place]);
}

function standsIn(batch: Batch, place: number, row: RowTemplate | undefined): void {
  if (row === undefined) return;
  row.batch = batch;
  row.place = place;
}

/** Eight bytes are compared as one number: 0 and -0 are equal though their bytes differ, and both hold zero bytes. */
function canBeCompared(bytes: Uint8Array): boolean {
  return !bytes.includes(0);
}

/**
 * How many rows of its batch, from `row` on, the bytes from `from` up to `to` repeat at another instant, which the stamps then
 * have.
 */
export function rowsMatching(
  row: RowTemplate,
  stamps: ByteStamps,
  chunk: Chunk,
  from: number,
  to: number,
): number {
  const { batch, place } = row;
  if (batch === null || batch.rows[place] !== row || batch.stampLength !== stamps.length()) return 0;
  const { edges } = batch;
  const start = edges[place] ?? 0;
  const end = Math.min(edges[batch.rows.length] ?? 0, start + to - from);
  if ((edges[place + 1] ?? 0) > end || !stamps.fits(chunk, from + row.before.length)) return 0;
  setStamps(batch, chunk.bytes, from + row.before.length);
  const same = sameUpTo(batch, start, end, chunk, from - start);
  if (same === edges[batch.rows.length]) return batch.rows.length - place;
  let last = place;
  while ((edges[last + 1] ?? 0) <= same) last += 1;
  return last - place;
}

/** Puts a stamp in the place of the one before: only the bytes in which they differ, often one. */
function setStamps({ bytes, stamps, stampLength }: Batch, chunk: Uint8Array, from: number): void {
  const first = stamps[0] ?? 0;
  let same = 0;
  while (same < stampLength && chunk[from + same] === bytes[first + same]) same += 1;
  if (same === stampLength) return;
  let last = stampLength - 1;
  while (chunk[from + last] === bytes[first + last]) last -= 1;
  for (let at = same; at <= last; at += 1) {
    const byte = chunk[from + at] ?? 0;
    for (let row = 0; row < stamps.length; row += 1) bytes[(stamps[row] ?? 0) + at] = byte;
  }
}

/** Up to where the bytes of a batch from `start` to `end` are those of the chunk, which stand `by` further on there. */
function sameUpTo(
  { bytes, view: batch }: Batch,
  start: number,
  end: number,
  { bytes: others, view: chunk }: Chunk,
  by: number,
): number {
  let at = start;
  // Four at a time: the loop itself would cost as much as what it compares.
  for (; at <= end - blockBytes; at += blockBytes)
    if (
      chunk.getFloat64(at + by, true) !== batch.getFloat64(at, true) ||
      chunk.getFloat64(at + by + 8, true) !== batch.getFloat64(at + 8, true) ||
      chunk.getFloat64(at + by + 16, true) !== batch.getFloat64(at + 16, true) ||
      chunk.getFloat64(at + by + 24, true) !== batch.getFloat64(at + 24, true)
    )
      break;
  for (; at <= end - wordBytes; at += wordBytes)
    if (chunk.getFloat64(at + by, true) !== batch.getFloat64(at, true)) break;
  while (at < end && others[at + by] === bytes[at]) at += 1;
  return at;
}

/** Puts a row that followed another in the place of the row that a batch has there. */
export function replaceInBatch(
  before: RowTemplate,
  found: RowTemplate,
  chunk: Uint8Array,
  from: number,
  to: number,
): void {
  const expected = rowAfter(before);
  const batch = expected?.batch ?? null;
  if (expected === null || batch === null || found.readings.length === 0 || isInBatch(found)) return;
  const { place } = expected;
  const source = chunk.subarray(from, to);
  if (!canBeCompared(source)) return;
  const { edges, stamps, rows, stampLength } = batch;
  const [start = 0, end = 0] = [edges[place], edges[place + 1]];
  const length = edges[rows.length] ?? 0;
  const by = source.length - (end - start);
  if (length + by > batch.bytes.length) growTo(batch, length + by + spareBytes);
  const { bytes } = batch;
  bytes.copyWithin(end + by, end, length);
  bytes.set(source, start);
  for (let index = place + 1; index <= rows.length; index += 1) edges[index] = (edges[index] ?? 0) + by;
  for (let index = place + 1; index < rows.length; index += 1) stamps[index] = (stamps[index] ?? 0) + by;
  stamps[place] = start + found.before.length;
  // All have the same stamp, even if this one came with another.
  const other = stamps[place === 0 ? 1 : 0] ?? stamps[place] ?? 0;
  bytes.copyWithin(stamps[place] ?? 0, other, other + stampLength);
  batch.rows[place] = found;
  batch.time = null;
  batch.timesUnchanged = 0;
  standsIn(batch, place, found);
}

/** The row of a batch that follows this one, or that is expected after it. */
function rowAfter(row: RowTemplate): RowTemplate | null {
  const { batch, place, next } = row;
  const following = batch !== null && batch.rows[place] === row ? batch.rows[place + 1] : undefined;
  if (following !== undefined) return following;
  return next !== null && isInBatch(next) ? next : null;
}

function growTo(batch: Batch, size: number): void {
  const bytes = new Uint8Array(size);
  bytes.set(batch.bytes);
  batch.bytes = bytes;
  batch.view = new DataView(bytes.buffer);
}
