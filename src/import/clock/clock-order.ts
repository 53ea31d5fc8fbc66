import type { Row } from '../bytes/row.ts';

/** A place in a file where the clock was set back: from there on the stamps are earlier than what was read before. */
export interface ClockStep {
  readonly line: number;
  readonly text: string;
  readonly at: number;
  /** The latest instant read before it. */
  readonly before: number;
}

/** Fewer stamps out of order than this are stray rows. Chosen here. */
const leastStamps = 3;

interface Run extends ClockStep {
  last: number;
  stamps: number;
}

/**
 * The instants of one parameter, or of the entries of one unit, in the order of rows. It tells stray rows from a clock that
 * was set back: after a step more stamps in a row are earlier than what was read before than are ever out of order
 * otherwise, and they rise until they have caught up. Source: design.md, section 2, Clocks.
 */
export interface ClockOrder {
  candidates: Run[];
  latest: number;
  strays: number;
  run: Run | null;
}

/** Nothing yet. */
export function clockOrder(): ClockOrder {
  return { candidates: [], latest: Number.NEGATIVE_INFINITY, strays: leastStamps - 1, run: null };
}

/** Takes the next instant; true if its row is out of order: a later instant stands before it. */
export function takeInOrder(order: ClockOrder, at: number, row: Row): boolean {
  if (at < order.latest) {
    takeOutOfOrder(order, at, row);
    return true;
  }
  if (order.run !== null) endRun(order, true);
  order.latest = at;
  return false;
}

function takeOutOfOrder(order: ClockOrder, at: number, row: Row): void {
  const { run, latest } = order;
  if (run === null || at < run.last) {
    endRun(order, false);
    order.run = { line: row.line, text: row.ownText(), at, before: latest, last: at, stamps: 1 };
  } else if (at > run.last) {
    run.last = at;
    run.stamps += 1;
  }
}

function endRun(order: ClockOrder, hasCaughtUp: boolean): void {
  const { run } = order;
  if (run === null) return;
  if (hasCaughtUp && run.stamps > order.strays) order.candidates.push(run);
  else {
    order.strays += run.stamps;
    order.candidates = order.candidates.filter((c) => c.stamps > order.strays);
  }
  order.run = null;
}

/** The steps of a whole file: one that several parameters or units show is one, reported at its first line. */
export function stepsOf(orders: readonly ClockOrder[]): readonly ClockStep[] {
  const kept: ClockStep[] = [];
  for (const step of orders.flatMap(stepsIn).sort((a, b) => a.line - b.line)) {
    if (!kept.some((k) => step.at <= k.before && step.before >= k.at)) kept.push(step);
  }
  return kept;
}

/** The steps back; one that has not caught up by the end of the file counts. */
function stepsIn(order: ClockOrder): readonly ClockStep[] {
  endRun(order, true);
  return order.candidates.map(({ line, text, at, before }) => ({ line, text, at, before }));
}
