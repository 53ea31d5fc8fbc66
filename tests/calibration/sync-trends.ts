import type { Random } from '../../samples/random.ts';
import { defaultFleetLimits } from '../../src/fleet/limits.ts';
import { groupReviews, type SyncTime } from '../../src/fleet/sync-groups.ts';
import { tellingChance } from '../../src/report/fleet-text.ts';
import { countHits } from './count-hits.ts';
import { hourMs, madeFrom } from './made-timelines.ts';
import type { Study, Trial } from './study.ts';
import { type TimeShape, timeShapes } from './sync-series.ts';

const monthMs = 30.5 * 24 * hourMs;

interface Setting {
  readonly shape: TimeShape;
  readonly groups: number;
  readonly months: number;
  readonly perMonth: number;
  readonly cases: number;
  /** Seconds by which the times of pairs differ, each worked on for three months in turn. */
  readonly pairsDiffer?: number;
}

const settings: readonly Setting[] = [
  { shape: 'skewed times', groups: 1, months: 10, perMonth: 1, cases: 1500 },
  { shape: 'whole 10 s', groups: 1, months: 10, perMonth: 5, cases: 1500 },
  { shape: 'skewed times', groups: 1, months: 60, perMonth: 5, cases: 600 },
  { shape: 'skewed times', groups: 8, months: 24, perMonth: 2, cases: 400 },
  { shape: 'whole 10 s', groups: 8, months: 24, perMonth: 2, cases: 400 },
  { shape: 'bell-shaped times', groups: 1, months: 24, perMonth: 5, cases: 600, pairsDiffer: 20 },
];

/** Sync times that do not change over the months; and those of pairs that differ, one pair after the other. */
export const syncTrendStudy: Study = {
  name: 'sync trend: sound fleets with any trend told',
  run: (random, scale) =>
    settings.map((setting): Trial => {
      const { shape, groups, months, perMonth, pairsDiffer } = setting;
      const cases = Math.ceil(setting.cases * scale);
      const said = `${shape}, ${groups} × ${months} months of ${perMonth}`;
      return {
        setting: pairsDiffer === undefined ? said : `pairs in turn, ${months} months`,
        promised: { low: 0, high: tellingChance },
        hits: countHits(cases, () => isTold(random, setting)),
        cases,
        ...(pairsDiffer === undefined
          ? {}
          : { because: 'the test knows no pairs: where one after the other is worked on, months are alike' }),
      };
    }),
};

/** Limits of the slope of times that do not change: how often they hold 0. */
export const slopeLimitStudy: Study = {
  name: 'sync trend: limits of the slope hold the true one',
  run: (random, scale) =>
    settings
      .filter(({ groups, pairsDiffer }) => groups === 1 && pairsDiffer === undefined)
      .map((setting): Trial => {
        const cases = Math.ceil(setting.cases * scale);
        return {
          setting: `${setting.shape}, ${setting.months} months of ${setting.perMonth}`,
          promised: { low: defaultFleetLimits.confidence, high: 1 },
          hits: countHits(cases, () => isHeldBySlope(random, setting)),
          cases,
        };
      }),
};

function isHeldBySlope(random: Random, setting: Setting): boolean {
  const [review] = groupReviews(madeTimes(random, setting), defaultFleetLimits);
  const { low = null, high = null } = review?.trend?.secondsPerYear ?? {};
  return (low ?? Number.NEGATIVE_INFINITY) <= 0 && (high ?? Number.POSITIVE_INFINITY) >= 0;
}

function isTold(random: Random, setting: Setting): boolean {
  const reviews = groupReviews(madeTimes(random, setting), defaultFleetLimits);
  return reviews.some(({ trend }) => trend !== null && trend.p <= tellingChance);
}

function madeTimes(
  random: Random,
  { shape, groups, months, perMonth, pairsDiffer = 0 }: Setting,
): readonly SyncTime[] {
  const pairs = Array.from({ length: months }, () => pairsDiffer * random());
  return Array.from({ length: groups * months * perMonth }, (_, index) => {
    const month = Math.floor(index / (groups * perMonth));
    const seconds = timeShapes[shape](random) + (pairs[Math.floor(month / 3)] ?? 0);
    const start = madeFrom + month * monthMs + random() * monthMs;
    return {
      group: `6.${index % groups}`,
      cause: 'reflash',
      start,
      low: seconds,
      high: seconds,
      end: 'ready',
    };
  });
}
