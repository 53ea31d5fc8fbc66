import { linesOf } from '../timeline/evidence.ts';
import { unexplainedBlanksOf } from '../timeline/module-changes.ts';
import type { TimelineEvent } from '../vocabulary.ts';
import type { Check, Outcome, SwapCase } from './check.ts';
import { judgeUnbroken } from './unbroken.ts';

export const baselineRedundant: Check = {
  id: 'baseline-redundant',
  title: 'Ready partner before the work',
  judge(swap) {
    const { removed } = swap.changes[0];
    const outcome = judgeRemoval(swap, removed);
    const blank = blankBefore(swap, removed);
    // The work may have begun there, or the partner have been lost before it.
    return blank === undefined || judgeRemoval(swap, blank).status === outcome.status
      ? outcome
      : {
          status: 'inconclusive',
          statement: `The logs do not show whether the first removal was that of half ${blank.half ?? ''}, which stopped reporting before that of half ${removed.half ?? ''} and was not seen again.`,
          evidence: linesOf(blank),
        };
  },
};

/** By the earliest and by the latest instant of a removal; undecided where they differ. */
function judgeRemoval(swap: SwapCase, removed: TimelineEvent): Outcome {
  const early = judgeUntil(swap, removed, removed.earliest);
  const late = judgeUntil(swap, removed, removed.time);
  if (early.status === late.status || early.status === 'inconclusive') return early;
  if (late.status === 'inconclusive') return late;
  return {
    status: 'inconclusive',
    statement:
      'The partner was lost within the 15 minutes before the first removal or outside them: the time of the removal is not known closely enough to tell.',
    evidence: (early.status === 'fail' ? early : late).evidence,
  };
}

function judgeUntil(swap: SwapCase, removed: TimelineEvent, to: number): Outcome {
  return judgeUnbroken(swap, {
    from: to - swap.limits.baselineSeconds * 1000,
    to,
    name: 'the 15 minutes before the first removal',
    // The loss that the removal brings, and its bounds, may reach into the window.
    spared: (loss) => loss.time >= removed.earliest - swap.rules.belongsMs,
  });
}

/** What may be an earlier removal of the same swap. */
function blankBefore({ facts, limits }: SwapCase, removed: TimelineEvent): TimelineEvent | undefined {
  const from = removed.time - limits.sameSwapSeconds * 1000;
  return unexplainedBlanksOf(facts.timeline).find((b) => b.time >= from && b.earliest < removed.earliest);
}
