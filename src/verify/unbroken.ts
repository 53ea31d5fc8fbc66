import { clip } from '../timeline/coverage.ts';
import { endLines, isLoss, linesOf, readyAt } from '../timeline/readiness.ts';
import { type NonEmpty, type SourceLine, sayDuration, type TimelineEvent } from '../vocabulary.ts';
import type { Outcome, SwapCase } from './check.ts';

/** A window in which the partner must have been ready. `spared` are losses that belong to the work that ends it. */
export interface Window {
  readonly from: number;
  readonly to: number;
  readonly name: string;
  readonly spared: (loss: TimelineEvent) => boolean;
}

/**
 * Whether the partner was ready without a break in a window. A break seen for certain fails; a window that the log does
 * not cover, an unobserved span in it, or a loss that may lie outside leaves it undecided.
 */
export function judgeUnbroken(swap: SwapCase, window: Window): Outcome {
  const { readiness, timeline } = swap.facts;
  const { from, to, name, spared } = window;
  const evidence = endLines(timeline);
  if (readiness.signal !== 'partner-ready') {
    return { status: 'not-observed', statement: 'Readiness of the partner was never logged.', evidence };
  }
  const losses = readiness.steps.filter((s) => isLoss(s) && s.time > from && s.earliest < to && !spared(s));
  const certain = losses.find((s) => s.earliest >= from && s.time <= to);
  if (certain !== undefined) {
    return {
      status: 'fail',
      statement: `The partner was not ready without a break ${name}: it was lost.`,
      evidence: linesOf(certain),
    };
  }
  const unready = readiness.steps.findLast((s) => s.time <= from);
  if (unready?.value === 'no' && hasTime(swap, unready, from, to)) {
    return {
      status: 'fail',
      statement: `The partner was not ready at the begin of the time ${name}.`,
      evidence: linesOf(unready),
    };
  }
  const possible = losses[0];
  if (possible !== undefined) {
    return {
      status: 'inconclusive',
      statement: `The partner was lost at about the begin or the end of the time ${name}.`,
      evidence: linesOf(possible),
    };
  }
  const short = shortfall(swap, window);
  if (short !== null) return { status: 'inconclusive', statement: short, evidence };
  return {
    status: 'pass',
    statement: `The partner was ready without a break ${name}${spacingNote(swap)}.`,
    evidence: proof(swap, window),
  };
}

/** Not ready when the window begins counts, unless it became ready within the bounds of that very begin. */
function hasTime({ facts }: SwapCase, unready: TimelineEvent, from: number, to: number): boolean {
  const next = facts.readiness.steps.find((s) => s.time > unready.time);
  return next === undefined || next.earliest > from || next.time > to;
}

function shortfall({ facts }: SwapCase, { from, to, name }: Window): string | null {
  const { timeline, readiness } = facts;
  const wanted = sayDuration((to - from) / 1000);
  const slack = Math.max(0, ...timeline.coverage.map((c) => c.stream.spacing));
  if (timeline.from > from + slack) {
    return `The log begins only ${sayDuration(Math.max(0, to - timeline.from) / 1000)} before; ${wanted} ${name} are needed.`;
  }
  if (readyAt(readiness, from + slack) === null) {
    return `Readiness of the partner is not known for the whole time ${name}.`;
  }
  const unseen = clip(timeline.unobserved, from, to);
  const first = unseen[0];
  return first === undefined
    ? null
    : `The time ${name} rests on an unobserved span of ${sayDuration((first.to - first.from) / 1000)}.`;
}

/** A poll can not exclude a break shorter than its spacing; that is said, and does not count against it. */
function spacingNote({ facts }: SwapCase): string {
  const polls = facts.timeline.coverage.filter((c) => c.stream.kind === 'reading');
  const journals = facts.timeline.coverage.some((c) => c.stream.kind === 'entry');
  const spacing = Math.max(0, ...polls.map((c) => c.stream.spacing)) / 1000;
  return polls.length === 0 || journals
    ? ''
    : ` (breaks shorter than the poll's ${sayDuration(spacing)} are not excluded)`;
}

/** Since when it was ready, and what ended that, if anything did. */
function proof({ facts }: SwapCase, { from }: Window): NonEmpty<SourceLine> {
  const ready = facts.readiness.steps.findLast((s) => s.time <= from && s.value === 'yes');
  const next = facts.readiness.steps.find((s) => s.time > from);
  const lines = [
    ...(ready === undefined ? [] : linesOf(ready)),
    ...(next === undefined ? [] : linesOf(next)),
  ];
  const [first, ...rest] = lines;
  return first === undefined ? endLines(facts.timeline) : [first, ...rest];
}
