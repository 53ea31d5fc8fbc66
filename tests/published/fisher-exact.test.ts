/**
 * Sources: Fisher, The Design of Experiments (1935), chapter II, the tea tasting: all eight cups right is 1 of 70 ways,
 * one wrong of each kind or better 17 of 70. The manual of R's fisher.test prints 0.2429 for the latter (Agresti,
 * Categorical Data Analysis, 2002, p. 91). Convictions of like-sex twins: Fisher (1935), Journal of the Royal Statistical
 * Society 98, table in the same manual; the p-value 0.0004652 is from memory. Tolerance: half a unit of the last place.
 */
import { describe, expect, test } from 'vitest';
import { fisherExact } from '../../src/statistics/fisher-exact.ts';

describe("Fisher's exact test", () => {
  test('tea tasting', () => {
    expect(fisherExact({ first: [4, 0], second: [0, 4] })).toBeCloseTo(1 / 70, 12);
    expect(fisherExact({ first: [3, 1], second: [1, 3] })).toBeCloseTo(17 / 70, 12);
    expect(Math.abs(fisherExact({ first: [3, 1], second: [1, 3] }) - 0.2429)).toBeLessThan(0.00005);
  });
  test('convictions of twins: 10 of 13 monozygotic against 2 of 17 dizygotic', () => {
    const p = fisherExact({ first: [10, 3], second: [2, 15] });
    expect(Math.abs(p - 0.0004652)).toBeLessThan(0.00000005);
  });
  test('an empty row or column says nothing', () => {
    expect(fisherExact({ first: [0, 0], second: [3, 4] })).toBeCloseTo(1, 12);
    expect(fisherExact({ first: [0, 5], second: [0, 4] })).toBeCloseTo(1, 12);
  });
});
