import type { Check } from './check.ts';
import { judgeUnbroken } from './unbroken.ts';

export const baselineRedundant: Check = {
  id: 'baseline-redundant',
  title: 'Ready partner before the work',
  judge(swap) {
    const { removed } = swap.changes[0];
    const to = removed.earliest;
    return judgeUnbroken(swap, {
      from: to - swap.limits.baselineSeconds * 1000,
      to,
      name: 'the 15 minutes before the first removal',
      // The loss that the removal brings, and its bounds, may reach into the window.
      spared: (loss) => loss.time >= to - swap.rules.belongsMs,
    });
  },
};
