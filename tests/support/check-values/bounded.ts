import { normalQuantileAt } from '../../../src/statistics/distributions.ts';
import { predictCount } from '../../../src/statistics/predict-count.ts';
import { predictTotals, type Try } from '../../../src/statistics/predict-totals.ts';
import { quantileLimits } from '../../../src/statistics/quantile-limits.ts';
import { survivalLimits } from '../../../src/statistics/survival-limits.ts';
import type { CheckValue } from './check-value.ts';

function exactly(count: number): readonly { readonly low: number; readonly high: number }[] {
  return Array.from({ length: count }, (_, index) => ({ low: index + 1, high: index + 1 }));
}

/** Sample, and the ranks of the limits of its median. */
const medianRanks: readonly (readonly [number, number | null, number | null])[] = [
  [5, null, null],
  [6, 1, 6],
  [10, 2, 9],
  [15, 4, 12],
  [20, 6, 15],
  [25, 8, 18],
  [50, 18, 33],
  [100, 40, 61],
];

/** Of the sample 1, 2, 3, ... a limit is its own rank. */
function rankValues(): readonly CheckValue[] {
  const shared = {
    method: 'Quantile limits',
    source:
      'Conover, Practical Nonparametric Statistics (1999), section 3.2; table of the sign test (from memory)',
    tolerance: 0,
  };
  return medianRanks.flatMap(([count, low, high]) => {
    const found = quantileLimits(exactly(count), 0.5);
    return [
      { ...shared, what: `median of ${count}, low`, expected: low, computed: found.low },
      { ...shared, what: `median of ${count}, high`, expected: high, computed: found.high },
    ];
  });
}

/** Of times 1, 2, 3, ... up to `all` those past `all - left` are unfinished then. */
function shareValues(): readonly CheckValue[] {
  const source =
    'Newcombe, Statistics in Medicine 17 (1998), comparison cases (proportions); digits as R 4.2.2 binom.test';
  const cases = [
    [81, 263, 0.25273675, 0.36762192],
    [15, 148, 0.05784401, 0.16165049],
  ] as const;
  return cases.flatMap(([left, all, low, high]) => {
    const found = survivalLimits(exactly(all))(all - left);
    const shared = { method: 'Survival limits', source, tolerance: 1e-7 };
    return [
      { ...shared, what: `${left} of ${all}, low`, expected: low, computed: found.low },
      { ...shared, what: `${left} of ${all}, high`, expected: high, computed: found.high },
    ];
  });
}

/** Normal scores about 100 with a deviation of 10: `count` of them. */
function normalTries(count: number): readonly Try[] {
  return Array.from({ length: count }, (_, index) => ({
    time: 100 + 10 * normalQuantileAt((index + 0.5) / count),
    width: 0,
    succeeded: true,
  }));
}

/**
 * The sum of 20 more of a normal sample of 50 lies within 20 mean - and + t s sqrt(20 + 20^2 / 50), t = 1.677 of 49 degrees of
 * freedom at 90 %. Where all took the same and none failed there is nothing to err by.
 */
function totalValues(): readonly CheckValue[] {
  const [found] = predictTotals(normalTries(50), [20], { seed: 1, rounds: 20_000, confidence: 0.9 });
  const squares = normalTries(50).reduce((sum, { time }) => sum + (time - 100) ** 2, 0);
  const reach = 1.677 * Math.sqrt(squares / 49) * Math.sqrt(20 + 400 / 50);
  const source =
    'Hahn and Meeker, Statistical Intervals (1991), chapter 4, mean of future normal values (from memory); the draws leave 3 %';
  const shared = { method: 'Total of future tries', source, tolerance: 0.03 * reach };
  const alike = Array.from({ length: 20 }, () => ({ time: 3, width: 0, succeeded: true }));
  const [same] = predictTotals(alike, [4], { seed: 1, rounds: 50, confidence: 0.9 });
  const exactly = { ...shared, source: 'constructed: all took 3', tolerance: 1e-12 };
  return [
    { ...shared, what: 'normal, low', expected: 2000 - reach, computed: found?.low },
    { ...shared, what: 'normal, high', expected: 2000 + reach, computed: found?.high },
    { ...exactly, what: 'alike, low', expected: 12, computed: same?.low },
    { ...exactly, what: 'alike, high', expected: 12, computed: same?.high },
  ];
}

const poisson =
  'constructed after Hahn and Meeker, Statistical Intervals (1991), chapter 7: exact conditional limits';

/**
 * 24 events in 5 years: of 24 + y in six years y fall in the last with chance 1/6 each. P[X <= 0 of 24] = (5/6)^24 = 0.0126 is below
 * 0.025, P[X <= 1 of 25] = (5/6)^25 + 25 (1/6) (5/6)^24 = 0.063 is not; P[X >= 10 of 34] = 0.04 is above, P[X >= 11 of 35] = 0.02 below.
 * No event in as long as is to come: P[X >= y of y] = 0.5^y, above 0.025 up to 5.
 */
function countValues(): readonly CheckValue[] {
  const row = (what: string, expected: number, computed: number | undefined): CheckValue => ({
    method: 'Prediction of a count',
    what,
    source: poisson,
    expected,
    computed,
    tolerance: 0,
  });
  const next = predictCount({ count: 24, exposure: 5 }, 1, 0.95);
  const none = predictCount({ count: 0, exposure: 1 }, 1, 0.95);
  return [
    row('24 in 5 years, expected', 4.8, next?.value),
    row('24 in 5 years, low', 1, next?.low),
    row('24 in 5 years, high', 10, next?.high),
    row('none in a year, low', 0, none?.low),
    row('none in a year, high', 5, none?.high),
  ];
}

/** Limits of times that are known between bounds, and predictions. */
export const boundedValues: readonly CheckValue[] = [
  ...rankValues(),
  ...shareValues(),
  ...totalValues(),
  ...countValues(),
];
