import { linesOf, linesOfAll } from '../timeline/evidence.ts';
import { type OutSpell, outSpellsOf, unexplainedBlanksOf } from '../timeline/module-changes.ts';
import { unobservedIn } from '../timeline/observation.ts';
import { readinessSpacing } from '../timeline/readiness.ts';
import type { BringUp, TimelineEvent } from '../vocabulary.ts';
import { type Check, type Outcome, type SwapCase, worstOf } from './check.ts';

export const oneHalfAtATime: Check = {
  id: 'one-half-at-a-time',
  title: 'One half at a time',
  judge(swap) {
    const [first] = swap.changes;
    const both = bothOut(swap);
    const [outcome, ...others] = orders(swap);
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
  },
};

/** Each removal of this swap against that of the other half before it. */
function orders(swap: SwapCase): readonly Outcome[] {
  const own: ReadonlySet<OutSpell> = new Set(swap.changes);
  const spells = [...swap.changes, ...otherSpells(swap)].sort((a, b) => a.removed.time - b.removed.time);
  return spells.flatMap((second, index) => {
    const first = spells.slice(0, index).findLast((s) => own.has(s) || mustSettle(swap, s, second));
    if (first === undefined || first.half === second.half) return [];
    if (!own.has(first) && !own.has(second)) return [];
    const doubtful = [first, second].find((s) => s.inserted === null && !own.has(s));
    const outcome = judgeOrder(swap, first, second);
    if (doubtful === undefined) return [outcome];
    if (outcome.status !== 'fail') return outcome.status === 'pass' ? [] : [outcome];
    const statement = `Half ${doubtful.half} stopped reporting and was not seen again; the logs do not show whether it was removed.`;
    return [{ ...outcome, status: 'inconclusive', statement }];
  });
}

/**
 * When halves were out, from a day before on, without a known change of their module: it came back, or another never said what
 * it is, or only polls show it gone.
 */
function otherSpells({ changes, facts, limits, to }: SwapCase): readonly OutSpell[] {
  const begin = changes[0].removed.earliest - limits.sameSwapSeconds * 1000;
  const known = new Set(changes.map((c) => c.removed));
  const back = outSpellsOf(facts.timeline).filter(({ inserted }) => inserted?.signal === 'inserted');
  const doubtful = unexplainedBlanksOf(facts.timeline).map(
    (removed): OutSpell => ({ half: removed.half ?? '', removed, inserted: null }),
  );
  return [...back, ...doubtful].filter(
    ({ removed }) => removed.time >= begin && removed.time <= to && !known.has(removed),
  );
}

/** A half that came back while the partner was ready all the time, or never came up as a standby, has nothing to settle. */
function mustSettle({ facts }: SwapCase, { half, removed, inserted }: OutSpell, second: OutSpell): boolean {
  const { timeline, readiness, bringUps } = facts;
  if (inserted === null || readiness.signal !== 'partner-ready') return true;
  if (!bringUps.some((b) => b.half === half && b.start.time >= inserted.earliest)) return false;
  const [from, to] = [removed.earliest, second.removed.earliest];
  const isLost = readiness.steps.some((s) => s.value !== 'yes' && s.time >= from && s.earliest < to);
  return isLost || unobservedIn(timeline, null, 'partner-ready', from, to).length > 0;
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

function movesOf({ removed, inserted }: OutSpell): readonly TimelineEvent[] {
  return inserted === null ? [removed] : [removed, inserted];
}

/** A half of which the bounds leave open that it was out and back before the other was removed. */
function mayBeFirst({ removed, inserted }: OutSpell, other: OutSpell): boolean {
  const isBack = inserted !== null && inserted.earliest < other.removed.time;
  return isBack && removed.earliest < other.removed.earliest;
}

function judgeOrder({ facts, rules }: SwapCase, first: OutSpell, second: OutSpell): Outcome {
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
  return mayHaveSettled(facts, rules, settled, inserted, second.removed)
    ? {
        status: 'inconclusive',
        statement: `The logs do not show whether half ${one} had settled before half ${two} was removed.`,
        evidence,
      }
    : { status: 'fail', statement: `Half ${two} was removed before half ${one} had settled.`, evidence };
}

/** Between two readings so far apart, or unobserved, the first may have settled, and the second have been removed. */
function mayHaveSettled(
  { timeline }: SwapCase['facts'],
  { holdMs }: SwapCase['rules'],
  bringUps: readonly BringUp[],
  inserted: TimelineEvent,
  { earliest, time }: TimelineEvent,
): boolean {
  if (Math.max(time - earliest, readinessSpacing(timeline)) > holdMs) return true;
  const hidden = unobservedIn(timeline, null, 'partner-ready', inserted.earliest, earliest);
  if (hidden.some((gap) => gap.to - gap.from >= holdMs)) return true;
  return bringUps.some((b) => b.mayHaveSettledAt !== null && b.mayHaveSettledAt < time);
}
