import { linesOf, linesOfAll } from '../timeline/evidence.ts';
import {
  type ModuleChange,
  type OutSpell,
  outSpellsOf,
  unexplainedBlanksOf,
} from '../timeline/module-changes.ts';
import type { TimelineEvent } from '../vocabulary.ts';
import { type Check, type Outcome, type SwapCase, worstOf } from './check.ts';

export const oneHalfAtATime: Check = {
  id: 'one-half-at-a-time',
  title: 'One half at a time',
  judge(swap) {
    const outcome = judgeChanges(swap);
    const blank = outcome.status === 'pass' ? blankThatBreaks(swap) : undefined;
    return blank === undefined
      ? outcome
      : {
          status: 'inconclusive',
          statement: `Half ${blank.half} stopped reporting and was not seen again; the logs do not show whether it was removed.`,
          evidence: linesOf(blank.removed),
        };
  },
};

/** A half of which only polls show that it went, and which would break the order if it was removed then. */
function blankThatBreaks(swap: SwapCase): ModuleChange | undefined {
  const { changes, facts, limits, to } = swap;
  const begin = changes[0].removed.time;
  return unexplainedBlanksOf(facts.timeline)
    .filter((b) => Math.abs(b.time - begin) <= limits.sameSwapSeconds * 1000 && b.earliest <= to)
    .map((removed): ModuleChange => {
      const nothing = { model: null, serial: null, firmware: null };
      return { half: removed.half ?? '', removed, inserted: null, before: nothing, found: nothing };
    })
    .find((blank) => changes.some((change) => breaksOrder(swap, change, blank)));
}

function breaksOrder(swap: SwapCase, change: ModuleChange, blank: ModuleChange): boolean {
  if (change.half === blank.half) return false;
  const isLater = blank.removed.time >= change.removed.time;
  const { status } = isLater ? judgeOrder(swap, change, blank) : judgeOrder(swap, blank, change);
  return status !== 'pass' && status !== 'not-observed';
}

function judgeChanges(swap: SwapCase): Outcome {
  const [first, ...rest] = swap.changes;
  const both = bothOut(swap);
  const pairs = rest.flatMap((second, index) => {
    const earlier = swap.changes[index] ?? first;
    return earlier.half === second.half ? [] : [judgeOrder(swap, earlier, second)];
  });
  const [outcome, ...others] = pairs;
  if (outcome === undefined && both !== null) return both;
  if (outcome === undefined) {
    return {
      status: 'pass',
      statement: `Only half ${first.half} was ${swap.changes.some((c) => c.inserted !== null) ? 'replaced' : 'removed'}.`,
      evidence: linesOfAll([first.removed, ...swap.changes.flatMap(movesOf)]),
    };
  }
  const judged = worstOf([outcome, ...others]);
  return both === null || judged.status === 'fail' ? judged : both;
}

/** Both halves logged out at one time, be it that one of their modules came back; `null`: not for certain. */
function bothOut({ changes, facts, to }: SwapCase): Outcome | null {
  const begin = changes[0].removed.earliest;
  const spells = outSpellsOf(facts.timeline)
    .filter(({ removed }) => removed.time >= begin && removed.time <= to)
    .sort((a, b) => a.removed.time - b.removed.time);
  for (const [index, second] of spells.entries()) {
    const first = spells.slice(0, index).find((s) => s.half !== second.half && isOutAt(s, second));
    if (first === undefined) continue;
    return {
      status: 'fail',
      statement: `Half ${second.half} was removed while half ${first.half} was still out.`,
      evidence: linesOfAll([first.removed, second.removed]),
    };
  }
  return null;
}

function isOutAt({ inserted }: OutSpell, { removed }: OutSpell): boolean {
  return inserted === null || inserted.earliest > removed.time;
}

function movesOf({ removed, inserted }: ModuleChange): readonly TimelineEvent[] {
  return inserted === null ? [removed] : [removed, inserted];
}

/** A half of which the bounds leave open that it was out and back before the other was removed. */
function mayBeFirst({ removed, inserted }: ModuleChange, other: ModuleChange): boolean {
  const isBack = inserted !== null && inserted.earliest < other.removed.time;
  return isBack && removed.earliest < other.removed.earliest;
}

function judgeOrder({ facts, rules }: SwapCase, first: ModuleChange, second: ModuleChange): Outcome {
  const { inserted } = first;
  const [one, two] = [first.half, second.half];
  const evidence = linesOfAll([first.removed, ...movesOf(first), second.removed]);
  if (mayBeFirst(second, first)) {
    return {
      status: 'inconclusive',
      statement: `The logs do not show whether half ${two} was back before half ${one} was removed.`,
      evidence,
    };
  }
  if (inserted === null || inserted.earliest > second.removed.time) {
    return {
      status: 'fail',
      statement: `Half ${two} was removed while half ${one} was still out.`,
      evidence,
    };
  }
  if (inserted.time > second.removed.earliest) {
    return {
      status: 'inconclusive',
      statement: `The logs do not show whether half ${one} was back before half ${two} was removed.`,
      evidence,
    };
  }
  if (facts.readiness.signal !== 'partner-ready') {
    return {
      status: 'not-observed',
      statement: `Whether half ${one} had settled was never logged.`,
      evidence: linesOf(second.removed),
    };
  }
  const settled = facts.bringUps.filter((b) => b.half === one && b.start.time >= inserted.earliest);
  if (settled.some((b) => b.settled !== null && b.settled.time <= second.removed.earliest)) {
    return {
      status: 'pass',
      statement: `Half ${two} was removed only after half ${one} had settled.`,
      evidence,
    };
  }
  // Between two readings so far apart the first may have settled, and the second have been removed.
  const isWide = second.removed.time - second.removed.earliest > rules.holdMs;
  const maybe =
    isWide || settled.some((b) => b.mayHaveSettledAt !== null && b.mayHaveSettledAt < second.removed.time);
  return maybe
    ? {
        status: 'inconclusive',
        statement: `The logs do not show whether half ${one} had settled before half ${two} was removed.`,
        evidence,
      }
    : { status: 'fail', statement: `Half ${two} was removed before half ${one} had settled.`, evidence };
}
