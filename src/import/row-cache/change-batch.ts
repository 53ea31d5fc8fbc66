import { canBeCompared, isInBatch, spareBytes, standsIn } from './batch-builder.ts';
import { gaugesOf } from './batch-gauges.ts';
import type { Chunk } from './chunk.ts';
import type { Batch, RowTemplate } from './row-template.ts';
import { matchesAfterStamp, type TemplateStore } from './template-store.ts';

/** A batch that came unchanged more often than this is not trusted any more than that, where it changes after all. */
const mostTrusted = 4;

/** Puts a row that followed another in the place of the row that a batch has there. */
export function replaceInBatch(
  before: RowTemplate,
  found: RowTemplate,
  templates: TemplateStore,
  chunk: Chunk,
  from: number,
  to: number,
): void {
  const expected = rowAfter(before);
  const batch = expected?.batch ?? null;
  if (expected === null || batch === null || found.readings.length === 0 || isInBatch(found)) return;
  const { place } = expected;
  const source = chunk.bytes.subarray(from, to);
  const { stamps, stampLength } = batch;
  if (!canBeCompared(source)) return;
  if (!matchesAfterStamp(templates, found, chunk, from + found.before.length + stampLength)) return;
  putBytes(batch, place, source);
  stamps[place] = (batch.edges[place] ?? 0) + found.before.length;
  // All have the same stamp, even if this one came with another.
  const other = stamps[place === 0 ? 1 : 0] ?? stamps[place] ?? 0;
  batch.bytes.copyWithin(stamps[place] ?? 0, other, other + stampLength);
  batch.rows[place] = found;
  batch.gauges[place] = gaugesOf(found, templates.numbers);
  batch.time = null;
  batch.timesUnchanged = Math.floor(Math.min(batch.timesUnchanged, mostTrusted) / 2);
  standsIn(batch, place, found);
}

/** The row of a batch that follows this one, or that is expected after it. */
function rowAfter(row: RowTemplate): RowTemplate | null {
  const { batch, place, next } = row;
  const following = batch !== null && batch.rows[place] === row ? batch.rows[place + 1] : undefined;
  if (following !== undefined) return following;
  return next !== null && isInBatch(next) ? next : null;
}

/** Puts bytes in the place of those of a row; where there are more or fewer the rows after it move. */
export function putBytes(batch: Batch, place: number, source: Uint8Array): void {
  const { edges, stamps, rows } = batch;
  const [start = 0, end = 0] = [edges[place], edges[place + 1]];
  const length = edges[rows.length] ?? 0;
  const by = source.length - (end - start);
  if (length + by > batch.bytes.length) growTo(batch, length + by + spareBytes);
  if (by !== 0) {
    batch.bytes.copyWithin(end + by, end, length);
    for (let index = place + 1; index <= rows.length; index += 1) edges[index] = (edges[index] ?? 0) + by;
    for (let index = place + 1; index < rows.length; index += 1) stamps[index] = (stamps[index] ?? 0) + by;
  }
  batch.bytes.set(source, start);
}

function growTo(batch: Batch, size: number): void {
  const bytes = new Uint8Array(size);
  bytes.set(batch.bytes);
  batch.bytes = bytes;
  batch.view = new DataView(bytes.buffer);
}
