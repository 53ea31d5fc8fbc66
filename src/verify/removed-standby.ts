import { linesOf, linesOfAll, uniqueLines } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { type ModuleChange, outSpellsOf } from '../timeline/module-changes.ts';
import { unobservedIn } from '../timeline/observation.ts';
import { mayChange, stepAt, track } from '../timeline/tracks.ts';
import type { TimelineEvent } from '../vocabulary.ts';
import { type Check, type Outcome, type SwapCase, worstOf } from './check.ts';

export const removedStandby: Check = {
  id: 'removed-standby',
  title: 'Only the standby was removed',
  judge(swap) {
    const [first, ...rest] = swap.changes;
    const changed = rest.map((change) => judgeRemoval(swap, change));
    // A module that was out and came back is not replaced, but had to be the standby's all the same.
    const cameBack = outSpellsOf(swap.facts.timeline)
      .filter(({ removed }) => !swap.changes.some((change) => change.removed === removed))
      .filter(({ removed }) => removed.time >= first.removed.earliest && removed.time <= swap.to)
      .map((spell) => judgeRemoval(swap, spell))
      .filter((outcome) => outcome.status === 'fail');
    return worstOf([judgeRemoval(swap, first), ...changed, ...cameBack]);
  },
};

type Removal = Pick<ModuleChange, 'half' | 'removed'>;

function judgeRemoval({ facts }: SwapCase, { half, removed }: Removal): Outcome {
  const roles = track(facts.timeline, half, 'role');
  // What happens at the very stamp of the removal is its effect.
  const isPoint = removed.earliest === removed.time;
  const before = stepAt(roles, removed.earliest, isPoint ? 'before' : 'including');
  if (before === undefined) {
    return {
      status: 'not-observed',
      statement: `The role of half ${half} at its removal was never logged.`,
      evidence: linesOf(removed),
    };
  }
  const evidence = linesOfAll([before, removed]);
  // It may have been removed anywhere in its bounds, after roles that nobody saw pass.
  const gap = unobservedIn(facts.timeline, half, 'role', before.time, removed.time).at(-1);
  const isUnseen = gap !== undefined && gap.to >= removed.earliest;
  // A note may tell of it after the logs end.
  const isBeyond = removed.time > facts.timeline.to;
  if (before.value === null || isUnseen || isBeyond) {
    return {
      status: 'inconclusive',
      statement: `The role of half ${half} just before its removal was not observed.`,
      evidence: isUnseen ? uniqueLines([...evidence, ...gap.evidence]) : evidence,
    };
  }
  const concluded = before.concluded ? ' (concluded from the role of the other half)' : '';
  if (before.value === 'standby') {
    return {
      status: 'pass',
      statement: `Half ${half} was standby when it was removed${concluded}.`,
      evidence,
    };
  }
  const isPassed = !isPoint && mayHavePassed(facts, half, removed);
  if (before.value === 'active' && !isPassed) {
    return {
      status: 'fail',
      statement: `Half ${half} was active when it was removed${concluded}.`,
      evidence,
    };
  }
  return {
    status: 'inconclusive',
    statement: `The logs do not show the role of half ${half} at its removal.`,
    evidence,
  };
}

/**
 * Within the bounds of the removal the roles may have been passed on first; or the other half was read as active already, and
 * this one may have given up its role unseen.
 */
function mayHavePassed({ timeline }: PairFacts, half: string, { earliest, time }: TimelineEvent): boolean {
  const own = track(timeline, half, 'role').filter((s) => s.value !== 'none' && s.value !== null);
  const others = timeline.halves.filter((h) => h !== half).map((h) => track(timeline, h, 'role'));
  const isTaken = others.some((steps) => stepAt(steps, earliest)?.value === 'active');
  return isTaken || [own, ...others].some((steps) => mayChange(steps, earliest, time));
}
