import { endLines, linesOf, uniqueLines } from '../timeline/evidence.ts';
import { unobservedIn } from '../timeline/observation.ts';
import { isLoss, readyAt } from '../timeline/readiness.ts';
import { type NonEmpty, type SourceLine, sayDuration, type TimelineEvent } from '../vocabulary.ts';
import type { Outcome, SwapCase } from './check.ts';

/** A window in which the partner must have been ready. `spared` are losses that belong to the work that ends it. */
export interface Window {
  readonly from: number;
  readonly to: number;
  /** The window as a noun, such as `the 15 minutes before the first removal`. */
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
  const certain = losses.find((s) => s.earliest >= from && s.time <= to && !isLast(swap, s));
  if (certain !== undefined) {
    return {
      status: 'fail',
      statement: `The partner was lost in ${name}.`,
      evidence: linesOf(certain),
    };
  }
  const unready = readiness.steps.findLast((s) => s.time <= from);
  if (unready?.value === 'no' && hasTime(swap, unready, from, to)) {
    return {
      status: 'fail',
      statement: `The partner was not ready at the start of ${name}.`,
      evidence: linesOf(unready),
    };
  }
  return judgeSilence(swap, window, losses[0]);
}

/** What the log ends with may belong to work that is logged next. */
function isLast({ facts, rules }: SwapCase, loss: TimelineEvent): boolean {
  return facts.timeline.to - loss.time <= rules.belongsMs;
}

/** No break was seen for certain: is it certain that there was none? */
function judgeSilence(swap: SwapCase, window: Window, possible: TimelineEvent | undefined): Outcome {
  const { timeline } = swap.facts;
  const { from, to, name } = window;
  if (possible !== undefined) {
    return {
      status: 'inconclusive',
      statement: `The partner was lost at about the start or the end of ${name}.`,
      evidence: linesOf(possible),
    };
  }
  const gaps = unobservedIn(timeline, null, 'partner-ready', from, to);
  const [gap] = gaps;
  if (gap !== undefined) {
    return {
      status: 'inconclusive',
      statement: `Readiness of the partner was not observed for ${sayDuration((gap.to - gap.from) / 1000)} of ${name}.`,
      evidence: gap.evidence,
    };
  }
  const short = shortfall(swap, window);
  if (short !== null) return { status: 'inconclusive', statement: short, evidence: endLines(timeline) };
  return {
    status: 'pass',
    statement: `The partner was ready without a break in ${name}${spacingNote(swap)}.`,
    evidence: proof(swap, window),
  };
}

/**
 * Not ready when the window begins counts, unless it became ready within the bounds of that very begin, or may have while nothing was
 * observed up to it.
 */
function hasTime({ facts }: SwapCase, unready: TimelineEvent, from: number, to: number): boolean {
  const gaps = unobservedIn(facts.timeline, null, 'partner-ready', unready.time, to);
  if (gaps.some((g) => g.from <= from)) return false;
  const next = facts.readiness.steps.find((s) => s.time > unready.time);
  return next === undefined || next.earliest > from || next.time > to;
}

function shortfall({ facts }: SwapCase, { from, to, name }: Window): string | null {
  const { timeline, readiness } = facts;
  const slack = Math.max(0, ...timeline.coverage.map((c) => c.stream.spacing));
  if (timeline.from > from + slack) {
    return `The log covers only the last ${sayDuration(Math.max(0, to - timeline.from) / 1000)} of ${name}.`;
  }
  if (timeline.to < to) {
    return `The log ends ${sayDuration((to - timeline.to) / 1000)} before the end of ${name}.`;
  }
  return readyAt(readiness, from + slack) === null
    ? `Readiness of the partner is not known for all of ${name}.`
    : null;
}

/** A poll cannot exclude a break shorter than its spacing; that is said, and does not count against it. */
function spacingNote({ facts }: SwapCase): string {
  const telling = facts.timeline.coverage.filter((c) => c.stream.signals.includes('partner-ready'));
  const isPolled = telling.every((c) => c.stream.kind === 'reading');
  const spacing = Math.max(0, ...telling.map((c) => c.stream.spacing)) / 1000;
  return !isPolled || spacing === 0
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
  return first === undefined ? endLines(facts.timeline) : uniqueLines([first, ...rest]);
}
