import { linesOfAll } from '../timeline/evidence.ts';
import { doubtfulRemovalsOf } from '../timeline/module-changes.ts';
import type { TimelineEvent } from '../vocabulary.ts';
import type { Check, Outcome, SwapCase } from './check.ts';
import { judgeUnbroken } from './unbroken.ts';

export const baselineRedundant: Check = {
  id: 'baseline-redundant',
  title: 'Ready partner before the work',
  judge(swap) {
    const { removed } = swap.changes[0];
    const outcome = judgeBefore(swap, removed);
    // A half that went blank before, and stays so, may yet prove to have been the first removal.
    const earlier = doubtfulRemovalsOf(swap.facts.timeline).find((e) => e.time < removed.time);
    if (earlier === undefined || outcome.status !== 'fail') return outcome;
    if (judgeBefore(swap, earlier).status === 'fail') return outcome;
    return {
      status: 'inconclusive',
      statement: `The partner was lost in the 15 minutes before the first removal, but half ${earlier.half} may have been removed before, as only polls show.`,
      evidence: linesOfAll([earlier, removed]),
    };
  },
};

function judgeBefore(swap: SwapCase, removed: TimelineEvent): Outcome {
  const to = removed.earliest;
  return judgeUnbroken(swap, {
    from: to - swap.limits.baselineSeconds * 1000,
    to,
    name: 'the 15 minutes before the first removal',
    // The loss that the removal brings, and its bounds, may reach into the window.
    spared: (loss) => loss.time >= to - swap.rules.belongsMs,
  });
}
