import { defaultFleetLimits } from '../../src/fleet/limits.ts';
import type { LossHistory } from '../../src/fleet/pair-figures.ts';
import { changesOfPairs } from '../../src/fleet/rate-changes.ts';
import { rateLosses } from '../../src/fleet/rate-losses.ts';
import { countOf, madeFleet, patterns, settingOf, sound } from './made-losses.ts';
import type { Study, Trial } from './study.ts';

/** Pairs, years and troubles of a pair in a year. */
const sizes = [
  [2, 10, 2],
  [8, 2, 6],
  [20, 2, 2],
  [100, 1, 6],
  [100, 5, 2],
] as const;

/** Sound fleets in which something is said of a pair. */
function soundFleets(name: string, isSaid: (fleet: readonly LossHistory[]) => boolean): Study {
  return {
    name,
    run: (random, scale) =>
      patterns.flatMap((pattern) =>
        sizes.map(([pairs, years, perYear]): Trial => {
          const cases = Math.ceil(scale * Math.min(1000, 20_000 / pairs));
          const made = sound(pairs, years, pattern, perYear);
          const hits = countOf(cases, () => isSaid(madeFleet(random, made)));
          const setting = `${settingOf(pattern, pairs, years)}, ${perYear} a year`;
          return { setting, promised: { low: 0, high: 0.05 }, hits, cases };
        }),
      ),
  };
}

export const lossTrend: Study = soundFleets(
  'more and more often: sound fleets with a pair said to lose its partner so',
  (fleet) => rateLosses(fleet, defaultFleetLimits).rates.some((rate) => rate.trend.comesCloser),
);

export const rateChange: Study = soundFleets(
  'change of rate: sound fleets with a pair said to have one',
  (fleet) => changesOfPairs(fleet, defaultFleetLimits).some((change) => change !== null),
);
