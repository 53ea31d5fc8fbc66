import { takeInOrder } from './clock-order.ts';
import type { RunTogether, SaidRow, SaidRun } from './said.ts';
import type { RunPlace } from './sink.ts';
import { ends, type State } from './sink-state.ts';
import { addSpan } from './spacing.ts';
import { endRound, type Rounds, readAlone, readTogether, settleRuns } from './together.ts';
import { touch, touchLast, type Unit } from './units.ts';

/**
 * Takes rows under one stamp that change nothing; `false`, and takes none, where one does or stands behind an earlier row.
 * The first time it takes reading by reading, the next time unit by unit, and from then on it counts.
 */
export function takeUnchanged(state: State, run: SaidRun, at: number, place: RunPlace): boolean {
  const { rows, together } = run;
  const { rounds } = state;
  if (together === null || !together.holds) {
    endRound(rounds);
    if (!isUnchanged(rows, at)) return false;
    standsAt(run, place);
    takeEach(state, run, at, place);
    run.together = readTogether(rows, at);
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
  state.tally[ends.unchanged] += rows.length;
  state.lastLine = Math.max(state.lastLine, place.line + rows.length - 1);
  return true;
}

function standsAt(run: SaidRun, { from, line }: RunPlace): void {
  run.from = from;
  run.line = line;
}

function isUnchanged(rows: readonly SaidRow[], at: number): boolean {
  // No reading of a unit is later than its last time: who is not before it is not before them.
  for (const { readings } of rows)
    for (const { unit, parameter, value } of readings)
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
function takeEach(state: State, run: SaidRun, at: number, { rowIn }: RunPlace): void {
  let last: Unit | null = null;
  let lastRow = 0;
  for (const [row, { readings }] of run.rows.entries()) {
    for (const { unit, parameter, value } of readings) {
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
