import { aalenJohansen, bandOf, incidenceQuantile } from '../../../src/statistics/aalen-johansen.ts';
import type { CheckValue } from './check-value.ts';

/**
 * Five attempts: ended at 1, 4 and 5, a competing end at 2, censored at 3. By hand, S the share that met neither: at 1 the
 * incidence rises by 1/5 (S 4/5), at 2 it stays (S 4/5 * 3/4 = 3/5), at 4, of two watched, by 3/5 * 1/2 = 3/10 (S 3/10), at 5, of one, by
 * 3/10. What is left, 1/5, is the share of the competing end. Censored in its place all would have ended.
 */
function curveValues(): readonly CheckValue[] {
  const steps = aalenJohansen([
    { seconds: 1, end: 'ended' },
    { seconds: 2, end: 'competing' },
    { seconds: 3, end: 'censored' },
    { seconds: 4, end: 'ended' },
    { seconds: 5, end: 'ended' },
  ]);
  return [0.8, 0.8, 0.8, 0.5, 0.2].map((expected, index) => ({
    method: 'Aalen-Johansen',
    what: `competing end, after ${index + 1}`,
    source: 'constructed: by hand after Aalen and Johansen (1978)',
    expected,
    computed: steps[index + 1]?.surviving,
    tolerance: 1e-12,
  }));
}

/** Of `all` values, none censored, `left` are left: the limits are those of a binomial share. */
function limitValues(): readonly CheckValue[] {
  const source =
    'Newcombe, Statistics in Medicine 17 (1998), comparison cases (proportions); digits as R 4.2.2 binom.test';
  return (
    [
      [81, 263, 0.25273675, 0.36762192],
      [15, 148, 0.05784401, 0.16165049],
    ] as const
  ).flatMap(([left, all, low, high]) => {
    const steps = aalenJohansen(
      Array.from({ length: all }, (_, index) => ({ seconds: index + 1, end: 'ended' })),
    );
    const step = steps.find(({ seconds }) => seconds === all - left);
    const found = step === undefined ? undefined : bandOf(step);
    const shared = { method: 'Limits of a curve', source, tolerance: 1e-7 };
    return [
      { ...shared, what: `${left} of ${all}, low`, expected: low, computed: found?.low },
      { ...shared, what: `${left} of ${all}, high`, expected: high, computed: found?.high },
    ];
  });
}

/** Sample of 1, 2, 3, ..., and the ranks of the limits of its median, from one value on. */
const medianRanks: readonly (readonly [number, number | null, number | null])[] = [
  [1, null, null],
  [5, null, null],
  [6, 1, 6],
  [10, 2, 9],
  [25, 8, 18],
  [100, 40, 61],
];

function quantileValues(): readonly CheckValue[] {
  const shared = {
    method: 'Median limits',
    source:
      'Conover, Practical Nonparametric Statistics (1999), section 3.2; table of the sign test (from memory)',
    tolerance: 0,
  };
  return medianRanks.flatMap(([count, low, high]) => {
    const found = incidenceQuantile(
      aalenJohansen(Array.from({ length: count }, (_, at) => ({ seconds: at + 1, end: 'ended' }))),
      0.5,
    );
    return [
      { ...shared, what: `of ${count}, low`, expected: low, computed: found.low },
      { ...shared, what: `of ${count}, high`, expected: high, computed: found.high },
    ];
  });
}

/** The curve with competing ends, its limits and those of its median. */
export const incidenceValues: readonly CheckValue[] = [
  ...curveValues(),
  ...limitValues(),
  ...quantileValues(),
];
