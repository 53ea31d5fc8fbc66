import type { Random } from '../../samples/random.ts';
import { compareGroups } from '../../src/fleet/compare-groups.ts';
import { defaultFleetLimits } from '../../src/fleet/limits.ts';
import { syncTimes } from '../../src/fleet/sync-groups.ts';
import type { BringUp } from '../../src/vocabulary.ts';
import { madeBringUp } from '../support/made-bring-up.ts';
import { normal } from './draws.ts';
import type { Study, Trial } from './study.ts';

const usualCases = 400;
/** Fewer deals than the program takes, for the sake of time. */
const limits = {
  ...defaultFleetLimits,
  comparison: { ...defaultFleetLimits.comparison, rounds: 500 },
};
const causes = ['inserted', 'restart', 'reflash'] as const;

/** Standard normal quantiles of 0.9 and 0.6 (tables), for the shares that they leave above. */
const deviates = { 0.1: 1.28155, 0.4: 0.253347 } as const;
type Cut = 0 | keyof typeof deviates;

/** Groups of so many attempts each after every cause, all alike but for what is superseded. */
interface Setting {
  readonly sizes: readonly number[];
  /** Seconds between two readings; 0 for a journal. */
  readonly spacing: number;
  /** Share that is superseded, of the first group and of the others. */
  readonly superseded: readonly [Cut, Cut];
}

const settings: readonly Setting[] = [0, 10].flatMap((spacing) =>
  [
    [3, 3],
    [2, 20],
    [10, 10],
    [40, 40],
    [5, 5, 5, 5, 5],
  ].map((sizes) => ({ sizes, spacing, superseded: [0.1, 0.1] as const })),
);
const uneven: readonly Setting[] = [
  [2, 20],
  [20, 2],
  [10, 10],
  [40, 40],
].map((sizes) => ({ sizes, spacing: 0, superseded: [0, 0.4] as const }));

/** Fleets of which a cause is said to differ although no group does. */
export const alikeGroups: Study = {
  name: 'sync times by group: alike groups said to differ',
  run: (random, scale) => {
    const cases = Math.max(20, Math.round(usualCases * scale));
    return [...settings, ...uneven].map((setting): Trial => {
      const { sizes, spacing, superseded } = setting;
      const cut = superseded[0] === superseded[1] ? '' : ', 0 and 40 % superseded';
      return {
        setting: `${spacing === 0 ? 'journal' : `poll of ${spacing} s`}, groups of ${sizes.join(', ')}${cut}`,
        promised: { low: 0, high: 0.05 },
        hits: Array.from({ length: cases }).filter(() => isSaidToDiffer(random, setting)).length,
        cases,
        ...(cut !== '' && sizes[0] === 2
          ? { because: 'two attempts of one group, and other groups are superseded more often' }
          : {}),
      };
    });
  },
};

function isSaidToDiffer(random: Random, { sizes, spacing, superseded }: Setting): boolean {
  const attempts = causes.flatMap((cause) =>
    sizes.flatMap((size, index) =>
      Array.from({ length: size }, () =>
        attempt(random, cause, `6.${index}.0`, spacing, superseded[index === 0 ? 0 : 1]),
      ),
    ),
  );
  const times = syncTimes(attempts, (a) => a.firmware);
  return compareGroups(times, [], limits)?.causes.some((c) => c.differs) ?? false;
}

function attempt(
  random: Random,
  cause: BringUp['cause'],
  firmware: string,
  spacing: number,
  cut: Cut,
): BringUp {
  const seconds = 100 * Math.exp(0.3 * normal(random));
  // Superseded at a time of its own, as widely spread, that comes first with chance `cut`: its deviate over that of the difference.
  const superseded =
    cut === 0 ? Infinity : 100 * Math.exp(0.3 * (normal(random) + Math.SQRT2 * deviates[cut]));
  if (superseded < seconds)
    return madeBringUp({ seconds: superseded, outcome: 'superseded', cause, firmware });
  if (spacing === 0) return madeBringUp({ seconds, outcome: 'settled', cause, firmware });
  const phase = random() * spacing;
  const middle = (Math.floor((seconds + phase) / spacing) + 0.5) * spacing - phase;
  return madeBringUp({ seconds: middle, outcome: 'settled', within: spacing / 2, cause, firmware });
}
