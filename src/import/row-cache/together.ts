import type { Row } from '../bytes/row.ts';
import type { Parameter } from '../changes/parameters.ts';
import type { RunTogether, SaidRow, SaidRun, UnitReadings } from '../changes/said.ts';
import { addSpan } from '../changes/spacing.ts';
import { touchLast } from '../changes/units.ts';

/**
 * Runs that come round and round with nothing new: each is counted, and noted unit by unit only when something else is read.
 * A round ends with anything that is no such run.
 */
export interface Rounds {
  round: number;
  /** The latest instant in this round. */
  latest: number;
  /** The runs that are counted and not yet noted. */
  readonly waiting: SaidRun[];
  rowIn: (run: SaidRun, row: number) => Row;
}

/** None yet. */
export function noRounds(): Rounds {
  return { round: 0, latest: Number.NEGATIVE_INFINITY, waiting: [], rowIn: () => noRowYet() };
}

function noRowYet(): never {
  throw new Error('A run that waits was never found.');
}

/** Something else is about to be read. */
export function endRound(rounds: Rounds): void {
  if (rounds.latest === Number.NEGATIVE_INFINITY) return;
  settleRuns(rounds);
  rounds.round += 1;
  rounds.latest = Number.NEGATIVE_INFINITY;
}

/** Notes unit by unit what was only counted. */
export function settleRuns({ waiting, rowIn }: Rounds): void {
  for (const run of waiting) {
    const { together, line } = run;
    if (together === null) continue;
    for (const { unit, readings, lastRow } of together.units) {
      addSpan(unit.spacing, together.span, readings * together.times);
      // Of two runs with rows of one unit the later one counts.
      if (line + lastRow > unit.lastLine) touchLast(unit, together.lastTime, rowIn(run, lastRow));
    }
    together.times = 0;
  }
  waiting.length = 0;
}

/** Binds the parameters of rows that were just read at one instant; it does not hold where one of them stands there twice. */
export function readTogether(rows: readonly SaidRow[], lastTime: number): RunTogether {
  const units = unitsIn(rows);
  const together = { holds: true, lastTime, units, span: Number.NaN, times: 0, gapsFrom: 0, round: -1 };
  for (const { readings } of rows)
    for (const { parameter } of readings) {
      if (parameter.together !== null) readAlone(parameter);
      parameter.together = together;
    }
  return together;
}

/** A parameter of rows that were read together is about to be read by itself. */
export function readAlone(parameter: Parameter): void {
  const { together } = parameter;
  if (together === null) return;
  parameter.lastTime = together.lastTime;
  parameter.order.latest = together.lastTime;
  parameter.together = null;
  together.holds = false;
}

function unitsIn(rows: readonly SaidRow[]): readonly UnitReadings[] {
  const units: UnitReadings[] = [];
  for (const [row, { readings }] of rows.entries())
    for (const { unit } of readings) {
      const last = units.at(-1);
      if (last?.unit === unit)
        units[units.length - 1] = { ...last, readings: last.readings + 1, lastRow: row };
      else units.push({ unit, readings: 1, firstRow: row, lastRow: row });
    }
  return units;
}
