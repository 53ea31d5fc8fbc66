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

/** Fewer stamps behind their neighbours than this are stray rows, whatever came before. Chosen here. */
const leastStamps = 3;

interface Run extends ClockStep {
  last: number;
  stamps: number;
}

/**
 * Tells stray rows from a clock that was set back: there more stamps stay behind, with none between, than ever came out
 * of order before, and go on upwards among themselves. Source: design.md, section 2, Clocks.
 */
export function clockOrder(): ClockOrder {
  const found: ClockStep[] = [];
  let latest = Number.NEGATIVE_INFINITY;
  let longest = leastStamps - 1;
  let run: Run | null = null;
  const end = (): void => {
    if (run !== null && run.stamps > longest) {
      longest = run.stamps;
      found.push({ line: run.line, text: run.text, at: run.at, before: run.before });
    }
    run = null;
  };
  return {
    take(at, row) {
      if (at >= latest) {
        if (run !== null) end();
        latest = at;
        return false;
      }
      if (run === null || at < run.last) {
        end();
        const text = detached(row.text());
        run = { line: row.line, text, at, before: latest, last: at, stamps: 1 };
      } else if (at > run.last) {
        run.last = at;
        run.stamps += 1;
      }
      return true;
    },
    steps() {
      end();
      return found;
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
