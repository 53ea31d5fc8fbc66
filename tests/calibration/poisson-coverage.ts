import { poissonAtLeast } from '../../src/statistics/distributions.ts';
import { poissonLimits } from '../../src/statistics/poisson-limits.ts';
import { poissonCount } from './made-timelines.ts';
import type { Study, Trial } from './study.ts';

const confidence = 0.95;
const settings = [
  { mean: 0.5, cases: 4000 },
  { mean: 3, cases: 4000 },
  { mean: 30, cases: 4000 },
  { mean: 1000, cases: 1500 },
  { mean: 20_000, cases: 300 },
];

/** Counts drawn about a known mean: how often their limits hold it, and how often a tail is as small as it says. */
export const poissonStudy: Study = {
  name: 'Poisson limits: the true mean lies within',
  run: (random, scale) =>
    settings.flatMap(({ mean, cases: most }): readonly Trial[] => {
      const cases = Math.ceil(most * scale);
      const counts = Array.from({ length: cases }, () => poissonCount(random, mean));
      const isWithin = (count: number): boolean => {
        const found = poissonLimits({ count, exposure: 1 }, confidence);
        return found !== null && found.low <= mean && mean <= found.high;
      };
      return [
        {
          setting: `mean ${mean}`,
          promised: { low: confidence, high: 1 },
          hits: counts.filter(isWithin).length,
          cases,
        },
        {
          setting: `mean ${mean}, called too many at 5 %`,
          promised: { low: 0, high: 1 - confidence },
          hits: counts.filter((count) => poissonAtLeast(count, mean) <= 1 - confidence).length,
          cases,
        },
      ];
    }),
};
