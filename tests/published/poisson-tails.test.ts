/**
 * Source: Garwood, Fiducial limits for the Poisson distribution, Biometrika 28 (1936): the standard table of exact limits,
 * computed to nine digits with R 4.2.2 (`qchisq`) and SciPy 1.10.1. At the lower limit of a count, that count or more has
 * the chance alpha / 2; at the upper limit, that count or fewer. Tolerance: 1e-7 relative, that of the table.
 * The chi-square points are those of any printed table (from memory): 3.841 at 95 % with 1 degree of freedom, 9.488 with
 * 4, 0.711 at 5 % with 4. Tolerance: half a unit of the printed last place.
 */
import { describe, expect, test } from 'vitest';
import {
  betaQuantileAt,
  binomialAtMost,
  chiSquareAtMost,
  gammaQuantileAt,
  poissonAtLeast,
} from '../../src/statistics/distributions.ts';
import { atLeast } from '../../src/statistics/rate-ratio.ts';

const limits: readonly { readonly tail: number; readonly rows: readonly (readonly number[])[] }[] = [
  {
    tail: 0.025,
    rows: [
      [0, 0, 3.68887945],
      [1, 0.025317808, 5.57164339],
      [2, 0.242209279, 7.22468767],
      [3, 0.618672123, 8.76727307],
      [4, 1.08986537, 10.2415887],
      [5, 1.62348639, 11.6683321],
      [6, 2.20189425, 13.059474],
      [7, 2.81436305, 14.4226754],
      [8, 3.45383218, 15.7631892],
      [9, 4.1153731, 17.0848035],
      [10, 4.7953887, 18.390356],
    ],
  },
  {
    tail: 0.005,
    rows: [
      [0, 0, 5.29831737],
      [1, 0.00501254182, 7.4301295],
      [5, 1.07792824, 14.1497594],
      [10, 3.71692213, 21.3978275],
      [20, 10.3532677, 34.6679987],
    ],
  },
];

describe.each(limits)('Poisson tails of $tail', ({ tail, rows }) => {
  test.each(rows)('at the limits of a count of %d', (count = 0, lower = 0, upper = 0) => {
    if (count > 0) expect(poissonAtLeast(count, lower) / tail).toBeCloseTo(1, 6);
    expect((1 - poissonAtLeast(count + 1, upper)) / tail).toBeCloseTo(1, 6);
  });
});

test('nothing or more is certain, and something can not come of nothing', () => {
  expect(poissonAtLeast(0, 0)).toBe(1);
  expect(poissonAtLeast(1, 0)).toBe(0);
});

// P[X >= 12] with mean 0.01 is the sum from 12 on of e^-0.01 0.01^k / k!; its first term is 0.01^12 / 479001600 *
// 0.990050 = 2.0669e-33, the second 0.01 / 13 of that. A tail taken from 1 would be 0 here.
test('the far tail keeps its digits', () => {
  expect(poissonAtLeast(12, 0.01) / (2.0669e-33 * (1 + 0.01 / 13))).toBeCloseTo(1, 3);
});

test.each([
  [3.841, 1, 0.95],
  [9.488, 4, 0.95],
  [0.711, 4, 0.05],
])('chi-square %d with %d degrees of freedom', (value, degrees, share) => {
  expect(chiSquareAtMost(value - 0.0005, degrees)).toBeLessThanOrEqual(share);
  expect(chiSquareAtMost(value + 0.0005, degrees)).toBeGreaterThanOrEqual(share);
});

/**
 * Chi-square points with 1,000 degrees of freedom, as tables print them (from memory). The tails by SciPy 1.17.1 (poisson.sf),
 * the last two by mpmath (gammainc, 40 digits). Tolerance: half a unit of the printed last place; relative 1e-12.
 */
describe('large counts', () => {
  test.each([
    [927.594, 0.05],
    [914.257, 0.025],
    [898.912, 0.01],
    [1074.679, 0.95],
    [1089.531, 0.975],
    [1106.969, 0.99],
  ])('chi-square %d with 1000 degrees of freedom', (value, share) => {
    expect(chiSquareAtMost(value - 0.0005, 1000)).toBeLessThanOrEqual(share);
    expect(chiSquareAtMost(value + 0.0005, 1000)).toBeGreaterThanOrEqual(share);
  });
  test.each([
    [1100, 1000, 0.0009626304058665587],
    [1200, 1000, 4.684203855872292e-10],
    [100_500, 100_000, 0.05719417610810259],
    [1001, 1000, 0.49159063283149407],
    [10_000, 10_100, 0.8413487504471796],
  ])('%d or more of %d expected', (count, expected, chance) => {
    expect(poissonAtLeast(count, expected) / chance).toBeCloseTo(1, 12);
  });
});

describe('identities that hold exactly', () => {
  // The chance of the count itself: e^-m m^n / n!, its logarithm by Stirling's series.
  const logOf = (count: number, mean: number): number =>
    count * Math.log(mean / count) +
    count -
    mean -
    Math.log(2 * Math.PI * count) / 2 -
    1 / (12 * count) +
    1 / (360 * count ** 3);
  // Our own tails begin at a mean of 900, and at a shape of 100: both sides of both.
  test.each([
    [99, 905],
    [101, 899],
    [101, 905],
    [899, 899.9],
    [899, 900.1],
    [5000, 5020],
    [5020, 5000],
    [1_000_000, 1_001_000],
  ])('%d or more is one more or more, and the count itself, of %d', (count, mean) => {
    const difference = poissonAtLeast(count, mean) - poissonAtLeast(count + 1, mean);
    expect(Math.abs(difference - Math.exp(logOf(count, mean)))).toBeLessThan(1e-13);
  });
  test.each([0.5, 0.05, 0.025, 0.0005, 0.975, 0.9995])('a quantile of %d gives its tail back', (share) => {
    for (const shape of [2, 50, 799, 801, 1000, 12_345, 1_000_000]) {
      const value = gammaQuantileAt(share, shape);
      expect(poissonAtLeast(shape, value) / share).toBeCloseTo(1, 10);
    }
  });
  test.each([
    [10, 20],
    [1000, 2000],
    [50_000, 50_000],
    [99_990, 10],
  ])('limits of %d of %d and more are those of their binomial tails', (count, failures) => {
    const all = count + failures;
    const low = betaQuantileAt(0.025, count, failures + 1);
    const high = betaQuantileAt(0.975, count + 1, failures);
    expect(atLeast(count, all, low) / 0.025).toBeCloseTo(1, 7);
    expect(binomialAtMost(count, all, high) / 0.025).toBeCloseTo(1, 7);
  });
});
