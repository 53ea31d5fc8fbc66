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
/** A clock that is set back so often before it has caught up is none: its rows are in no order. Chosen here. */
const mostFurther = 8;

/** Stamps in a row that are earlier than what was read before, and rise. */
interface Run extends ClockStep {
  last: number;
  stamps: number;
  /** The line on which it had caught up; infinity where it has not. */
  to: number;
}

/**
 * The instants of one parameter, or of the entries of one unit, in the order of rows. It tells stray rows from a clock that
 * was set back: after a step more stamps in a row are earlier than what was read before than are ever out of order
 * otherwise, and they rise until they have caught up. One that goes back again before that is set back further. Source:
 * design.md, section 2, Clocks.
 */
export interface ClockOrder {
  candidates: Run[];
  latest: number;
  strays: number;
  /** The runs that go on, each behind the one before it. */
  runs: Run[];
  /** What went further back since the first of them began, and has caught up with the one before it. */
  further: Run[];
}

/** Nothing yet. */
export function clockOrder(): ClockOrder {
  return {
    candidates: [],
    latest: Number.NEGATIVE_INFINITY,
    strays: leastStamps - 1,
    runs: [],
    further: [],
  };
}

/** Takes the next instant; true if its row is out of order: a later instant stands before it. */
export function takeInOrder(order: ClockOrder, at: number, row: Row): boolean {
  if (at < order.latest) {
    takeOutOfOrder(order, at, row);
    return true;
  }
  goOnInOrder(order, at, row.line);
  return false;
}

/** Takes an instant that is known not to be earlier than any before it, from that line. */
export function goOnInOrder(order: ClockOrder, at: number, line: number): void {
  if (order.runs.length > 0) endRuns(order, line);
  order.latest = at;
}

function takeOutOfOrder(order: ClockOrder, at: number, row: Row): void {
  const { runs } = order;
  for (let run = runs.at(-1); run !== undefined && at >= run.before; run = runs.at(-1)) {
    runs.pop();
    if (!isStray(order, run)) order.further.push({ ...run, to: row.line });
  }
  const run = runs.at(-1);
  if (run !== undefined && at >= run.last) {
    if (at > run.last) run.stamps += 1;
    run.last = at;
    return;
  }
  if (run !== undefined && isStray(order, run)) runs.pop();
  const before = runs.at(-1)?.last ?? order.latest;
  const to = Number.POSITIVE_INFINITY;
  runs.push({ line: row.line, text: row.ownText(), at, before, last: at, stamps: 1, to });
  if (order.further.length + runs.length > mostFurther + 1) dropRuns(order);
}

/** True for a run that is too short for a step: it counts as so many stray rows. */
function isStray(order: ClockOrder, { stamps }: Run): boolean {
  if (stamps > order.strays) return false;
  addStrays(order, stamps);
  return true;
}

function addStrays(order: ClockOrder, stamps: number): void {
  order.strays += stamps;
  order.candidates = order.candidates.filter((c) => c.stamps > order.strays);
}

/** All that is behind has caught up on a line. */
function endRuns(order: ClockOrder, line: number): void {
  const ended = [...order.further, ...order.runs.map((run) => ({ ...run, to: line }))];
  order.runs = [];
  order.further = [];
  for (const run of ended) if (!isStray(order, run)) order.candidates.push(run);
}

/** So many runs are rows in no order, all but the last, which may be the start of something else. */
function dropRuns(order: ClockOrder): void {
  const last = order.runs.pop();
  const dropped = [...order.further, ...order.runs];
  order.runs = last === undefined ? [] : [{ ...last, before: order.latest }];
  order.further = [];
  addStrays(
    order,
    dropped.reduce((sum, { stamps }) => sum + stamps, 0),
  );
}

/** A step as one or several parameters or units show it. */
interface Shown {
  readonly step: Run;
  readonly by: Set<ClockOrder>;
}

/**
 * The steps of a whole file: one that several parameters or units show is one, reported at its first line. Where more rows are stray than
 * are behind for a step, the rows are in no order, and what looks like a step is chance.
 */
export function stepsOf(orders: readonly ClockOrder[]): readonly ClockStep[] {
  const ended = orders.map(endOf);
  const found = ended.flatMap((order) => order.candidates.map((step) => ({ step, order })));
  const behind = found.reduce((sum, { step }) => sum + step.stamps, 0);
  const strays = ended.reduce((sum, order) => sum + order.strays - (leastStamps - 1), 0);
  if (strays > behind) return [];
  const shown: Shown[] = [];
  for (const { step, order } of found.sort((a, b) => a.step.line - b.step.line)) {
    const same = shown.findLast((s) => !s.by.has(order) && areOne(s.step, step));
    if (same === undefined) shown.push({ step, by: new Set([order]) });
    else same.by.add(order);
  }
  return shown.map(({ step: { line, text, at, before } }) => ({ line, text, at, before }));
}

/** The second begins before the first has caught up, and they go over the same time. */
function areOne(first: Run, second: Run): boolean {
  return second.line <= first.to && second.at <= first.before && second.before >= first.at;
}

/** The order at the end of the file: a step that has not caught up counts. More rows may follow: what was asked about stays as it is. */
function endOf(order: ClockOrder): ClockOrder {
  if (order.runs.length + order.further.length === 0) return order;
  const ended = { ...order, candidates: [...order.candidates] };
  endRuns(ended, Number.POSITIVE_INFINITY);
  return ended;
}
