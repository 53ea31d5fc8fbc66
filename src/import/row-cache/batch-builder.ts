import { gaugesOf } from './batch-gauges.ts';
import { type Chunk, chunkOf } from './chunk.ts';
import type { Batch, RowTemplate } from './row-template.ts';
import { matchesAfterStamp, type TemplateStore } from './template-store.ts';

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
/** Spare bytes of a batch, for rows that are longer than those whose place they take. */
export const spareBytes = 64;

/** No row yet. */
export function batchBuilder(): BatchBuilder {
  return { rows: [], edges: [], bytes: new Uint8Array(0), clock: Number.NaN };
}

/** Adds a row that ends at `end` to the rows before it, if it follows them under their stamp; else it starts with this one. */
export function addToBatch(
  builder: BatchBuilder,
  row: RowTemplate,
  templates: TemplateStore,
  { bytes }: Chunk,
  from: number,
  end: number,
): void {
  const clock = templates.stamps.clock();
  // Where a chunk ends is chance: rows that end there are no batch.
  if (builder.bytes !== bytes) dropRows(builder);
  const isFree = row.readings.length > 0 && !isInBatch(row);
  const isNext = builder.edges.at(-1) === from && builder.clock === clock && isFree;
  if (!isNext) endBatch(builder, templates);
  if (!isFree) return;
  if (builder.rows.length === 0) {
    builder.bytes = bytes;
    builder.clock = clock;
    builder.edges.push(from);
  }
  builder.rows.push(row);
  builder.edges.push(end);
  if (builder.rows.length === longestBatch) endBatch(builder, templates);
}

/** True for a row whose place in a batch no other has taken. */
export function isInBatch(row: RowTemplate): boolean {
  return row.batch !== null && row.batch.rows[row.place] === row;
}

/** No row follows: what there is becomes a batch. */
function endBatch(builder: BatchBuilder, templates: TemplateStore): void {
  const { rows, edges, bytes } = builder;
  dropRows(builder);
  if (rows.length >= 2 || holdsMany(rows[0])) makeBatch(rows, edges, bytes, templates);
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
  templates: TemplateStore,
): void {
  const [from = 0] = places;
  const source = chunk.subarray(from, places.at(-1));
  if (!canBeCompared(source)) return;
  const bytes = new Uint8Array(source.length + spareBytes);
  bytes.set(source);
  const own = chunkOf(bytes);
  const edges = Int32Array.from(places, (place) => place - from);
  const stamps = Int32Array.from(rows, (row, index) => (edges[index] ?? 0) + row.before.length);
  const stampLength = templates.stamps.length();
  const batch: Batch = {
    rows,
    time: null,
    timesUnchanged: 0,
    from: 0,
    line: 0,
    ...own,
    edges,
    stamps,
    stampLength,
    gauges: [],
  };
  for (const [place, row] of rows.entries()) {
    // A number that a gauge reads and this lane does not, such as one with an exponent: its row is read as text.
    if (!matchesAfterStamp(templates, row, own, (stamps[place] ?? 0) + stampLength)) return;
    batch.gauges.push(gaugesOf(row, templates.numbers));
  }
  for (const [place, row] of rows.entries()) standsIn(batch, place, row);
}

/** The row has that place in the batch. */
export function standsIn(batch: Batch, place: number, row: RowTemplate): void {
  row.batch = batch;
  row.place = place;
}

/** Eight bytes are compared as one number: 0 and -0 are equal though their bytes differ, and both hold zero bytes. */
export function canBeCompared(bytes: Uint8Array): boolean {
  return !bytes.includes(0);
}
