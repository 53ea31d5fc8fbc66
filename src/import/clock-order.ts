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

/**
 * Tells stray rows from a clock that was set back: there more stamps stay behind, with none between, than ever come out of
 * order otherwise, going on upwards until they have caught up. Source: design.md, section 2, Clocks.
 */
export function clockOrder(): ClockOrder {
  let candidates: Run[] = [];
  let latest = Number.NEGATIVE_INFINITY;
  let strays = leastStamps - 1;
  let run: Run | null = null;
  const end = (hasCaughtUp: boolean): void => {
    if (run === null) return;
    if (hasCaughtUp && run.stamps > strays) candidates.push(run);
    else {
      strays += run.stamps;
      candidates = candidates.filter((c) => c.stamps > strays);
    }
    run = null;
  };
  return {
    take(at, row) {
      if (at >= latest) {
        if (run !== null) end(true);
        latest = at;
        return false;
      }
      if (run === null || at < run.last) {
        end(false);
        run = { line: row.line, text: detached(row.text()), at, before: latest, last: at, stamps: 1 };
      } else if (at > run.last) {
        run.last = at;
        run.stamps += 1;
      }
      return true;
    },
    steps() {
      end(true);
      return candidates.map(({ line, text, at, before }) => ({ line, text, at, before }));
    },
  };
}

/** The steps of a whole file: one that several parameters or units show is one, told at its first line. */
export function stepsOf(orders: readonly ClockOrder[]): readonly ClockStep[] {
  const kept: ClockStep[] = [];
  for (const step of orders.flatMap((o) => [...o.steps()]).sort((a, b) => a.line - b.line)) {
    if (!kept.some((k) => step.at <= k.before && step.before >= k.at)) kept.push(step);
  }
  return kept;
}
