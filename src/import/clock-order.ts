import { detached } from './decode.ts';
import type { Row } from './row.ts';

/** A place in a file from which on the stamps stay behind what was read before. */
export interface ClockStep {
  readonly line: number;
  readonly text: string;
  readonly at: number;
  /** The latest instant read before it. */
  readonly before: number;
}

/** Follows the instants of one parameter, or of the entries of one unit, in the order of rows. */
export interface ClockOrder {
  /** True if the row stands behind an earlier one. */
  take(at: number, row: Row): boolean;
  /** The steps back so far; what still stays behind at the end of the file counts. */
  steps(): readonly ClockStep[];
}

/** Fewer stamps behind their neighbours than this are stray rows. Chosen here. */
const leastStamps = 3;

interface Run extends ClockStep {
  last: number;
  stamps: number;
}

interface State {
  candidates: Run[];
  latest: number;
  strays: number;
  run: Run | null;
}

/**
 * Tells stray rows from a clock that was set back: there more stamps stay behind, with none between, than ever come out of
 * order otherwise, going on upwards until they have caught up. Source: design.md, section 2, Clocks.
 */
export function clockOrder(): ClockOrder {
  // An object, not variables: a number that changes with every row is kept in its place there.
  const state: State = {
    candidates: [],
    latest: Number.NEGATIVE_INFINITY,
    strays: leastStamps - 1,
    run: null,
  };
  return {
    take(at, row) {
      if (at >= state.latest) {
        if (state.run !== null) endRun(state, true);
        state.latest = at;
        return false;
      }
      takeBehind(state, at, row);
      return true;
    },
    steps() {
      endRun(state, true);
      return state.candidates.map(({ line, text, at, before }) => ({ line, text, at, before }));
    },
  };
}

function takeBehind(state: State, at: number, row: Row): void {
  const { run, latest } = state;
  if (run === null || at < run.last) {
    endRun(state, false);
    state.run = { line: row.line, text: detached(row.text()), at, before: latest, last: at, stamps: 1 };
  } else if (at > run.last) {
    run.last = at;
    run.stamps += 1;
  }
}

function endRun(state: State, hasCaughtUp: boolean): void {
  const { run } = state;
  if (run === null) return;
  if (hasCaughtUp && run.stamps > state.strays) state.candidates.push(run);
  else {
    state.strays += run.stamps;
    state.candidates = state.candidates.filter((c) => c.stamps > state.strays);
  }
  state.run = null;
}

/** The steps of a whole file: one that several parameters or units show is one, told at its first line. */
export function stepsOf(orders: readonly ClockOrder[]): readonly ClockStep[] {
  const kept: ClockStep[] = [];
  for (const step of orders.flatMap((o) => [...o.steps()]).sort((a, b) => a.line - b.line)) {
    if (!kept.some((k) => step.at <= k.before && step.before >= k.at)) kept.push(step);
  }
  return kept;
}
