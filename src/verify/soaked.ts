import { linesOf } from '../timeline/evidence.ts';
import { stepAt } from '../timeline/tracks.ts';
import { sayDuration } from '../vocabulary.ts';
import type { Check } from './check.ts';
import { judgeUnbroken } from './unbroken.ts';

export const soaked: Check = {
  id: 'soaked',
  title: 'Ready partner for 30 minutes at the end',
  judge(swap) {
    const { facts, settledAt, to, limits } = swap;
    const name = 'in the 30 minutes at the end';
    const last = stepAt(facts.readiness.steps, to);
    if (facts.readiness.signal === 'partner-ready' && last?.value === 'no') {
      return { status: 'fail', statement: 'At the end the partner is not ready.', evidence: linesOf(last) };
    }
    const from = to - limits.soakSeconds * 1000;
    if (settledAt !== null && settledAt > from) {
      const outcome = judgeUnbroken(swap, { from: settledAt, to, name, spared: () => false });
      if (outcome.status !== 'pass') return outcome;
      const seen = sayDuration((to - settledAt) / 1000);
      return {
        ...outcome,
        status: 'inconclusive',
        statement: `The log ends ${seen} after the last module had settled; ${sayDuration(limits.soakSeconds)} are needed.`,
      };
    }
    return judgeUnbroken(swap, { from, to, name, spared: () => false });
  },
};
