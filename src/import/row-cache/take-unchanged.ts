import type { RunTogether, SaidRow, SaidRun } from '../changes/said.ts';
import type { RunPlace } from '../changes/sink.ts';
import { ends, type State } from '../changes/sink-state.ts';
import { addSpan } from '../changes/spacing.ts';
import { touch, touchLast, type Unit } from '../changes/units.ts';
import { takeInOrder } from '../clock/clock-order.ts';
import { endRound, type Rounds, readAlone, readTogether, settleRuns } from './together.ts';

/** A run that was taken so often one reading after the other is likely to come so again. */
const calmFrom = 2;

/**
 * Takes rows of a run that change nothing; `false`, and takes none, where one does or stands behind an earlier row. At first
 * it takes reading by reading, then unit by unit, and from then on it counts.
 */
export function takeUnchanged(state: State, run: SaidRun, at: number, place: RunPlace): boolean {
  const { together } = run;
  const { rounds } = state;
  const isWhole = place.first === 0 && place.end === run.rows.length;
  if (together === null || !together.holds || !isWhole) {
    endRound(rounds);
    if (!isUnchanged(run.rows, at, place)) return false;
    standsAt(run, place);
    takeEach(state, run, at, place);
    run.calm = isWhole ? run.calm + 1 : 0;
    if (run.calm >= calmFrom) run.together = readTogether(run.rows, at);
  } else if (isRoutine(rounds, together, at)) {
    if (together.times === 0) rounds.waiting.push(run);
    together.times += 1;
    together.lastTime = at;
    standsAt(run, place);
  } else {
    settleRuns(rounds);
    if (!isLater(together, at)) return false;
    standsAt(run, place);
    takeUnits(rounds, run, together, at, place);
  }
  rounds.latest = Math.max(rounds.latest, at);
  state.tally[ends.unchanged] += place.end - place.first;
  state.lastLine = Math.max(state.lastLine, place.line + place.end - 1);
  return true;
}

function standsAt(run: SaidRun, { from, line }: RunPlace): void {
  run.from = from;
  run.line = line;
}

function isUnchanged(rows: readonly SaidRow[], at: number, { first, end }: RunPlace): boolean {
  // No reading of a unit is later than its last time: who is not before it is not before them.
  for (let row = first; row < end; row += 1)
    for (const { unit, parameter, value } of rows[row]?.readings ?? [])
      if (parameter.raw !== value || at < unit.lastTime) return false;
  return true;
}

/** True if the rows come as they did the time before, with nothing else between and no gap. */
function isRoutine({ round, latest }: Rounds, together: RunTogether, at: number): boolean {
  const span = at - together.lastTime;
  return together.round === round && at >= latest && span === together.span && span <= together.gapsFrom;
}

function isLater({ units }: RunTogether, at: number): boolean {
  for (const { unit } of units) if (at < unit.lastTime) return false;
  return true;
}

/** Takes unit by unit. */
function takeUnits(
  rounds: Rounds,
  run: SaidRun,
  together: RunTogether,
  at: number,
  { rowIn }: RunPlace,
): void {
  const span = at - together.lastTime;
  let gapsFrom = Number.POSITIVE_INFINITY;
  for (const { unit, readings, firstRow, lastRow } of together.units) {
    if (at - unit.lastTime > unit.gapsFrom) {
      touch(unit, at, rowIn(run, firstRow));
      endRound(rounds);
    }
    addSpan(unit.spacing, span, readings);
    touchLast(unit, at, rowIn(run, lastRow));
    gapsFrom = Math.min(gapsFrom, unit.gapsFrom);
  }
  rounds.rowIn = rowIn;
  together.lastTime = at;
  together.span = span;
  together.gapsFrom = gapsFrom;
  together.round = rounds.round;
}

/** Takes reading by reading. */
function takeEach(state: State, run: SaidRun, at: number, { first, end, rowIn }: RunPlace): void {
  let last: Unit | null = null;
  let lastRow = 0;
  for (let row = first; row < end; row += 1) {
    for (const { unit, parameter, value } of run.rows[row]?.readings ?? []) {
      if (unit !== last) {
        if (last !== null) touchLast(last, at, rowIn(run, lastRow));
        if (at - unit.lastTime > unit.gapsFrom) touch(unit, at, rowIn(run, row));
        last = unit;
      }
      lastRow = row;
      if (parameter.together !== null) readAlone(parameter);
      takeInOrder(parameter.order, at, state.row);
      addSpan(unit.spacing, at - parameter.lastTime);
      // One string for both: then they are compared by their place, not letter by letter.
      parameter.raw = value;
      parameter.lastTime = at;
    }
  }
  if (last !== null) touchLast(last, at, rowIn(run, lastRow));
}
