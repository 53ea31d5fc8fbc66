import type { Row } from '../bytes/row.ts';
import { leaveShared } from '../changes/parameters.ts';
import { addSpan } from '../changes/spacing.ts';
import { touchLast } from '../changes/units.ts';
import { noteGauge } from './batch-gauges.ts';
import type { Batch, BatchTime, RowTemplate, UnitReadings } from './row-template.ts';

/**
 * Batches that come again and again with nothing new: each is counted, and noted unit by unit only when something else is
 * read. A cycle ends with anything that is no such batch.
 */
export interface PendingBatches {
  cycle: number;
  /** The latest instant in this cycle. */
  latest: number;
  /** The batches that are counted and not yet noted, and the chunk that they stand in. */
  readonly waiting: Batch[];
  bytes: Uint8Array | null;
  rowIn: (batch: Batch, row: number) => Row;
}

/** None yet. */
export function noPending(): PendingBatches {
  return { cycle: 0, latest: Number.NEGATIVE_INFINITY, waiting: [], bytes: null, rowIn: () => noRowYet() };
}

function noRowYet(): never {
  throw new Error('A batch is pending that was never found.');
}

/** Something else is about to be read: notes what is pending, and begins another cycle. */
export function endCycle(pending: PendingBatches): void {
  if (pending.latest === Number.NEGATIVE_INFINITY) return;
  flushPending(pending);
  pending.cycle += 1;
  pending.latest = Number.NEGATIVE_INFINITY;
}

/** Notes unit by unit what was only counted. */
export function flushPending({ waiting, rowIn }: PendingBatches): void {
  for (const batch of waiting) {
    const { time, line } = batch;
    if (time === null) continue;
    for (const { unit, readings, lastRow } of time.units) {
      addSpan(unit.spacing, time.span, readings * time.timesPending);
      // Of two batches with rows of one unit the later one counts.
      if (line + lastRow > unit.lastLine) touchLast(unit, time.lastTime, rowIn(batch, lastRow));
    }
    for (const gauge of time.gauges) {
      noteGauge(gauge, time);
      gauge.timesNoted = 0;
    }
    time.timesPending = 0;
  }
  waiting.length = 0;
}

/** Throws Error, for a defect, where batches of another chunk are still pending: their rows could not be found any more. */
export function checkChunk(pending: PendingBatches, bytes: Uint8Array): void {
  if (pending.bytes === bytes) return;
  if (pending.waiting.length > 0)
    throw new Error('Batches of the chunk before are still pending: it was not flushed.');
  pending.bytes = bytes;
}

/** Lets the parameters of a batch that was just read share their instant; it is not valid where one stands there twice. */
export function shareTime({ rows, gauges }: Batch, lastTime: number): BatchTime {
  const time: BatchTime = {
    isValid: true,
    lastTime,
    units: unitsIn(rows),
    gauges: gauges.flat(),
    gaugeRows: gauges.filter((some) => some.length > 0).length,
    binEnd: Number.NEGATIVE_INFINITY,
    span: Number.NaN,
    timesPending: 0,
    gapsFrom: 0,
    cycle: -1,
  };
  for (const { readings } of rows)
    for (const { parameter } of readings) {
      if (parameter.shared !== null) leaveShared(parameter);
      parameter.shared = time;
    }
  return time;
}

function unitsIn(rows: readonly RowTemplate[]): readonly UnitReadings[] {
  const units: { -readonly [key in keyof UnitReadings]: UnitReadings[key] }[] = [];
  let last = units[0];
  for (const [row, { readings }] of rows.entries())
    for (const { unit } of readings) {
      if (last?.unit !== unit) {
        last = { unit, readings: 0, firstRow: row, lastRow: row };
        units.push(last);
      }
      last.readings += 1;
      last.lastRow = row;
    }
  return units;
}
