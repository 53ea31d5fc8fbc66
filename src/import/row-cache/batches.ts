import { moveGauges } from './batch-gauges.ts';
import { putBytes } from './change-batch.ts';
import type { Chunk } from './chunk.ts';
import type { Replay } from './replay.ts';
import type { Batch, RowTemplate } from './row-template.ts';
import { matchesAfterStamp, type TemplateStore } from './template-store.ts';

const wordBytes = 8;
const blockBytes = 4 * wordBytes;

/** What is read by batches, and where it goes. */
interface BatchReading {
  readonly templates: TemplateStore;
  readonly replay: Pick<Replay, 'flush'>;
}

/**
 * How many rows of its batch, from `row` on, the bytes from `from` up to `to` repeat at another instant, which the stamps then
 * have. The numbers of gauges may be others: the batch has them from then on.
 */
export function rowsMatching(
  row: RowTemplate,
  reading: BatchReading,
  chunk: Chunk,
  from: number,
  to: number,
): number {
  const { batch, place } = row;
  const { stamps } = reading.templates;
  if (batch === null || batch.rows[place] !== row || batch.stampLength !== stamps.length()) return 0;
  const { edges, rows } = batch;
  const by = from - (edges[place] ?? 0);
  if (!stamps.fits(chunk, from + row.before.length)) return 0;
  setStamps(batch, chunk.bytes, from + row.before.length);
  for (let next = place; ; next += 1) {
    const end = Math.min(edges[rows.length] ?? 0, to - by);
    const same = sameUpTo(batch, edges[next] ?? 0, end, chunk, by);
    if (same === edges[rows.length]) return rows.length - place;
    while ((edges[next + 1] ?? 0) <= same) next += 1;
    if (!takeNumbers(reading, batch, next, chunk, by, same)) return next - place;
    if (next + 1 === rows.length) return rows.length - place;
  }
}

/**
 * Where a row of a batch differs from the bytes that stand `by` further on in the chunk, and only in the numbers of its gauges:
 * takes these into the batch. `false` where that is not all.
 */
function takeNumbers(
  { templates, replay }: BatchReading,
  batch: Batch,
  place: number,
  chunk: Chunk,
  by: number,
  differsAt: number,
): boolean {
  const { edges, rows } = batch;
  const row = rows[place];
  const stampEnd = (batch.stamps[place] ?? 0) + batch.stampLength;
  if (row === undefined || row.gauges === 0 || differsAt < stampEnd) return false;
  if (!matchesAfterStamp(templates, row, chunk, stampEnd + by)) return false;
  const [start = 0, end = 0] = [edges[place], edges[place + 1]];
  if (templates.end - by === end)
    for (let at = differsAt; at < end; at += 1) batch.bytes[at] = chunk.bytes[at + by] ?? 0;
  else {
    // Rows of this batch that are only counted are found by their places, which are about to be others.
    replay.flush();
    putBytes(batch, place, chunk.bytes.subarray(start + by, templates.end));
  }
  moveGauges(batch, place, templates.numbers);
  return true;
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
