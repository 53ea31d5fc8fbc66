import { endOfBin } from '../changes/gauges.ts';
import { leaveShared } from '../changes/parameters.ts';
import { endsSilence, keepResumed } from '../changes/silences.ts';
import { ends, type SinkState } from '../changes/sink-state.ts';
import { addSpan, isLongSpan } from '../changes/spacing.ts';
import { touch, touchLast, type Unit } from '../changes/units.ts';
import { goOnInOrder } from '../clock/clock-order.ts';
import type { BatchPlace } from './batch-place.ts';
import { endCycle, flushPending, type PendingBatches, shareTime } from './pending-batches.ts';
import type { Batch, BatchTime, RowTemplate } from './row-template.ts';

/** A batch that came unchanged so many times more than it was changed is likely to come so again. */
const sharedFrom = 2;

/**
 * Takes rows of a batch that change nothing; `false`, and takes none, where one does or is out of order. At first it takes
 * reading by reading, then unit by unit, and from then on it counts.
 */
export function takeBatch(
  state: SinkState,
  pending: PendingBatches,
  batch: Batch,
  at: number,
  place: BatchPlace,
): boolean {
  const { time } = batch;
  const isWhole = place.first === 0 && place.end === batch.rows.length;
  if (time === null || !time.isValid || !isWhole) {
    if (!takeApart(state, pending, batch, at, place)) return false;
  } else if (isRoutine(pending, time, at)) {
    if (time.timesPending === 0) pending.waiting.push(batch);
    time.timesPending += 1;
    time.lastTime = at;
    standsAt(batch, place);
  } else {
    flushPending(pending);
    if (!isLater(time, at)) return false;
    if (isLong(time, at)) takeApart(state, pending, batch, at, place);
    else {
      standsAt(batch, place);
      takeUnits(pending, batch, time, at, place);
    }
  }
  if (isWhole) batch.timesUnchanged += 1;
  pending.latest = Math.max(pending.latest, at);
  const gaugeRows = isWhole && batch.time !== null ? batch.time.gaugeRows : countGaugeRows(batch, place);
  state.tally[ends.used] += gaugeRows;
  state.tally[ends.unchanged] += place.end - place.first - gaugeRows;
  state.lastLine = Math.max(state.lastLine, place.line + place.end - 1);
  return true;
}

/** Takes reading by reading, and lets them share their instant if they came unchanged often enough. */
function takeApart(
  state: SinkState,
  pending: PendingBatches,
  batch: Batch,
  at: number,
  place: BatchPlace,
): boolean {
  endCycle(pending);
  if (!isUnchanged(batch.rows, at, place)) return false;
  standsAt(batch, place);
  takeEach(state, batch, at, place);
  const isAtEnd = place.end === batch.rows.length && batch.timesUnchanged >= sharedFrom;
  if (isAtEnd && wereRead(batch.rows, at, place.first)) batch.time = shareTime(batch, at);
  return true;
}

/** True if the rows before one were all read in order at an instant, and are since then what the batch expects. */
function wereRead(rows: readonly RowTemplate[], at: number, before: number): boolean {
  for (let row = 0; row < before; row += 1)
    for (const { unit, parameter, value } of rows[row]?.readings ?? []) {
      const { gauge, raw, shared, lastTime, order } = parameter;
      const isInOrder = order.latest === at && order.runs.length === 0 && unit.lastTime === at;
      if (shared !== null || lastTime !== at || !isInOrder || (gauge === null && raw !== value)) return false;
    }
  return true;
}

function countGaugeRows({ rows }: Batch, { first, end }: BatchPlace): number {
  let count = 0;
  for (let row = first; row < end; row += 1) if ((rows[row]?.gauges ?? 0) > 0) count += 1;
  return count;
}

/** True if so long has passed that some of it may have been silent while its unit was read. */
function isLong({ units, lastTime }: BatchTime, at: number): boolean {
  for (const { unit } of units) if (isLongSpan(unit.spacing, at - lastTime)) return true;
  return false;
}

function standsAt(batch: Batch, { from, line }: BatchPlace): void {
  batch.from = from;
  batch.line = line;
}

function isUnchanged(rows: readonly RowTemplate[], at: number, { first, end }: BatchPlace): boolean {
  // No reading of a unit is later than the last time of the unit: what is not before that is in order.
  for (let row = first; row < end; row += 1)
    for (const { unit, parameter, value } of rows[row]?.readings ?? [])
      if ((parameter.gauge === null && parameter.raw !== value) || at < unit.lastTime) return false;
  return true;
}

/**
 * True if the rows come as they did the time before, with nothing else between and no gap. Then nothing was silent: in a
 * cycle all batches come round alike.
 */
function isRoutine({ cycle, latest }: PendingBatches, time: BatchTime, at: number): boolean {
  const span = at - time.lastTime;
  return (
    time.cycle === cycle &&
    at >= latest &&
    span === time.span &&
    span <= time.gapsFrom &&
    (time.gauges.length === 0 || at < time.binEnd)
  );
}

function isLater({ units }: BatchTime, at: number): boolean {
  for (const { unit } of units) if (at < unit.lastTime) return false;
  return true;
}

/** Takes unit by unit. */
function takeUnits(
  pending: PendingBatches,
  batch: Batch,
  time: BatchTime,
  at: number,
  { rowIn }: BatchPlace,
): void {
  const span = at - time.lastTime;
  let gapsFrom = Number.POSITIVE_INFINITY;
  for (const { unit, readings, firstRow, lastRow } of time.units) {
    if (at - unit.lastTime > unit.gapsFrom) {
      touch(unit, at, rowIn(batch, firstRow));
      endCycle(pending);
    }
    addSpan(unit.spacing, span, readings);
    touchLast(unit, at, rowIn(batch, lastRow));
    gapsFrom = Math.min(gapsFrom, unit.gapsFrom);
  }
  for (const { reader, number } of time.gauges) reader.add(at, number);
  pending.rowIn = rowIn;
  time.binEnd = endOfBin(at);
  time.lastTime = at;
  time.span = span;
  time.gapsFrom = gapsFrom;
  time.cycle = pending.cycle;
}

/** Takes reading by reading. */
function takeEach(state: SinkState, batch: Batch, at: number, { first, end, line, rowIn }: BatchPlace): void {
  let last: Unit | null = null;
  let lastRow = 0;
  for (let row = first; row < end; row += 1) {
    for (const { reader, number } of batch.gauges[row] ?? []) reader.add(at, number);
    for (const { unit, parameter, value } of batch.rows[row]?.readings ?? []) {
      if (unit !== last) {
        if (last !== null) touchLast(last, at, rowIn(batch, lastRow));
        if (at - unit.lastTime > unit.gapsFrom) touch(unit, at, rowIn(batch, row));
        last = unit;
      }
      lastRow = row;
      if (parameter.shared !== null) leaveShared(parameter);
      goOnInOrder(parameter.order, at, line + row);
      const span = at - parameter.lastTime;
      if (span > unit.spacing.usualTo && endsSilence(unit, parameter, at))
        keepResumed(state, unit, parameter, at, rowIn(batch, row));
      addSpan(unit.spacing, span);
      // One string for both: then they are compared by their place, not letter by letter.
      if (parameter.gauge === null) parameter.raw = value;
      parameter.lastTime = at;
    }
  }
  if (last !== null) touchLast(last, at, rowIn(batch, lastRow));
}
