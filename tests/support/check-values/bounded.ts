import { bootstrapSums } from '../../../src/statistics/bootstrap.ts';
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

/** Of ten values, half 1, ten drawn: binomial (10, 1/2), P[<= 2] = 56/1024, P[<= 3] = 176/1024, the other side alike. */
function sumValues(): readonly CheckValue[] {
  const [two, ten] = bootstrapSums([0, 0, 0, 0, 0, 1, 1, 1, 1, 1], [2, 10], {
    seed: 20_261_125,
    rounds: 10_000,
    confidence: 0.8,
  });
  const shared = { method: 'Bootstrap sums', source: 'binomial distribution, by hand', tolerance: 0 };
  return [
    { ...shared, what: 'two, low', expected: 0, computed: two?.low },
    { ...shared, what: 'two, high', expected: 2, computed: two?.high },
    { ...shared, what: 'ten, low', expected: 3, computed: ten?.low },
    { ...shared, what: 'ten, middle', expected: 5, computed: ten?.median },
    { ...shared, what: 'ten, high', expected: 7, computed: ten?.high },
  ];
}

/** Limits of times that are known between bounds, and of sums. */
export const boundedValues: readonly CheckValue[] = [...rankValues(), ...shareValues(), ...sumValues()];
