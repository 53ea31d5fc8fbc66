import { between, exactly, judge } from '../timeline/durations.ts';
import { linesOf, linesOfAll, uniqueLines } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import type { ModuleChange } from '../timeline/module-changes.ts';
import { unobservedIn } from '../timeline/observation.ts';
import { spells, stepAt, track } from '../timeline/tracks.ts';
import { type BringUp, sayBounds, sayDuration, type TimelineEvent } from '../vocabulary.ts';
import { type Check, type Outcome, type SwapCase, worstOf } from './check.ts';
import { judgeAbsent } from './last-bring-ups.ts';

export const identifiedStandby: Check = {
  id: 'identified-standby',
  title: 'New module took the standby role',
  judge(swap) {
    const [first, ...rest] = swap.changes;
    return worstOf([judgeChange(swap, first), ...rest.map((change) => judgeChange(swap, change))]);
  },
};

function judgeChange(swap: SwapCase, change: ModuleChange): Outcome {
  const { half, inserted } = change;
  if (inserted === null) return judgeAbsent(swap, change);
  const stated = track(swap.facts.timeline, half, 'role').filter((s) => !s.concluded);
  if (stated.every((s) => s.value === 'none' || s.value === null)) {
    return {
      status: 'not-observed',
      statement: `No line ever states the role of half ${half}.`,
      evidence: linesOf(inserted),
    };
  }
  const taken = stated.find(
    (s) => s.time >= inserted.time && s.value !== 'none' && s.value !== null && s.time <= swap.to,
  );
  if (taken === undefined) return judgeUnstated(swap, half, inserted);
  // The first word of it is that it took over: it was standby before, unsaid.
  if (taken.value === 'active' && readied(swap, half, inserted, taken.time) !== undefined)
    return judgeUnstated(swap, half, inserted);
  return judgeTaken(swap, half, inserted, taken);
}

function judgeTaken(
  { facts, limits, rules }: SwapCase,
  half: string,
  inserted: TimelineEvent,
  taken: TimelineEvent,
): Outcome {
  const gaps = unobservedIn(facts.timeline, half, 'role', inserted.time, taken.time);
  const evidence = uniqueLines([...linesOfAll([inserted, taken]), ...gaps.flatMap((g) => g.evidence)]);
  if (taken.value !== 'standby') {
    const since = Math.max(taken.earliest, inserted.earliest);
    const isUnseen = taken.time - since > rules.holdMs || mayHaveTakenOver(facts, half, since, taken.time);
    const statement = `Half ${half} took the role ${taken.value ?? 'none'} after its insertion, not standby.`;
    return { status: gaps.length > 0 || isUnseen ? 'inconclusive' : 'fail', statement, evidence };
  }
  const wait = between(inserted, taken);
  const low = Math.min(wait.low, ...gaps.map((g) => Math.max(0, g.from - inserted.time) / 1000));
  const outcome = judge(low, wait.high, limits.roleSeconds);
  const status = outcome === 'within' ? 'pass' : outcome === 'exceeded' ? 'fail' : 'inconclusive';
  return {
    status,
    statement:
      wait.high < 1
        ? `Half ${half} took the standby role at its insertion.`
        : `Half ${half} took the standby role ${sayBounds(low, wait.high)} after its insertion.`,
    evidence,
  };
}

/** Between two readings it may have come up as standby and been switched to, where the other half left the active role in between. */
function mayHaveTakenOver({ timeline }: PairFacts, half: string, from: number, to: number): boolean {
  return timeline.halves
    .filter((other) => other !== half)
    .flatMap((other) => spells(track(timeline, other, 'role'), 'active'))
    .some(({ end }) => end !== null && end.earliest < to && end.time > from);
}

/** The bring-up of the new module that became ready before an instant. */
function readied(
  { facts }: SwapCase,
  half: string,
  inserted: TimelineEvent,
  before: number,
): BringUp | undefined {
  return facts.bringUps.find(
    (b) => b.half === half && b.start.time >= inserted.earliest && b.ready !== null && b.ready.time <= before,
  );
}

/** No line states the role after the insertion: a ready partner is a standby, if it came in time. */
function judgeUnstated(swap: SwapCase, half: string, inserted: TimelineEvent): Outcome {
  const { facts, limits, to } = swap;
  const bringUp = readied(swap, half, inserted, to);
  if (bringUp?.ready != null) {
    const wait = between(inserted, { ...bringUp.ready, resolution: inserted.resolution });
    return {
      status: wait.high <= limits.roleSeconds ? 'pass' : 'inconclusive',
      statement: `No line states the role of half ${half} after its insertion; it was the ready partner ${sayBounds(wait.low, wait.high)} later.`,
      evidence: uniqueLines([...linesOf(inserted), ...bringUp.evidence]),
    };
  }
  const evidence = linesOf(inserted);
  // A ready partner at the end is that half's, though no start of it was seen.
  const now = stepAt(track(facts.timeline, null, 'partner-ready'), to);
  if (now?.value === 'yes') {
    const statement = `No line states the role of half ${half} after its insertion; the partner is ready at the end.`;
    return { status: 'inconclusive', statement, evidence: linesOfAll([inserted, now]) };
  }
  const watched = between(inserted, exactly(Math.max(to, inserted.time)));
  const gap = unobservedIn(facts.timeline, half, 'role', inserted.time, to)[0];
  if (gap !== undefined) {
    const statement = `The role of half ${half} was not observed for ${sayDuration((gap.to - gap.from) / 1000)} after its insertion.`;
    return { status: 'inconclusive', statement, evidence: uniqueLines([...evidence, ...gap.evidence]) };
  }
  return {
    status: watched.low > limits.roleSeconds ? 'fail' : 'inconclusive',
    statement: `Half ${half} took no role within the ${sayDuration(watched.seconds)} observed after its insertion.`,
    evidence,
  };
}
