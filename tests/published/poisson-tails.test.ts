/**
 * Source: Garwood, Fiducial limits for the Poisson distribution, Biometrika 28 (1936): the standard table of exact limits,
 * computed to nine digits with R 4.2.2 (`qchisq`) and SciPy 1.10.1. At the lower limit of a count, that count or more has
 * the chance alpha / 2; at the upper limit, that count or fewer. Tolerance: 1e-7 relative, that of the table.
 * The chi-square points are those of any printed table (from memory): 3.841 at 95 % with 1 degree of freedom, 9.488 with
 * 4, 0.711 at 5 % with 4. Tolerance: half a unit of the printed last place.
 */
import { describe, expect, test } from 'vitest';
import { chiSquareAtMost, poissonAtLeast } from '../../src/statistics/distributions.ts';

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
