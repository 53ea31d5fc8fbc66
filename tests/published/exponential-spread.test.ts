/**
 * Source: Gail and Gastwirth, Journal of the Royal Statistical Society B 40 (1978), pp. 350-357: the definition of the
 * Gini statistic and its mean 1/2 and variance 1 / (12 (n - 1)) under an exponential, as the manual of R's package
 * exptest (gini.exp.test, Details) gives them. No worked example with printed figures could be read; the exact law is
 * tried against a simulation and against sums worked out by hand.
 */
import { describe, expect, test } from 'vitest';
import { seeded } from '../../samples/random.ts';
import { exponentialSpread, uniformSumAtMost } from '../../src/statistics/exponential-spread.ts';

const simulated = Array.from({ length: 20_000 }, (_, seed) => {
  const random = seeded(seed + 1);
  const durations = Array.from({ length: 6 }, () => -Math.log(1 - random()));
  return exponentialSpread(durations);
});

describe('spread of durations against an exponential', () => {
  test('by hand: 1, 2, 3 have mean difference 8/6, so a Gini of 2/9 * 3/2 = 1/3', () => {
    // Sum over all ordered pairs of |difference| is 8; 8 / (2 * n * (n - 1) * mean) = 8 / (2 * 3 * 2 * 2) = 1/3.
    // 2 * 1/3 as a sum of two uniforms: (2/3)^2 / 2 = 2/9.
    expect(exponentialSpread([3, 1, 2])?.gini).toBeCloseTo(1 / 3, 12);
    expect(exponentialSpread([3, 1, 2])?.p).toBeCloseTo(2 / 9, 12);
  });
  test('sums of uniforms by hand: triangle for two, 1/6 at one for three, symmetry', () => {
    expect(uniformSumAtMost(0.5, 2)).toBeCloseTo(0.125, 12);
    expect(uniformSumAtMost(1.5, 2)).toBeCloseTo(0.875, 12);
    expect(uniformSumAtMost(1, 3)).toBeCloseTo(1 / 6, 12);
    expect(uniformSumAtMost(10, 20)).toBeCloseTo(0.5, 9);
  });
  test('20,000 samples of six exponentials: mean 1/2, variance 1/60, and p is uniform', () => {
    const ginis = simulated.map((s) => s?.gini ?? Number.NaN);
    const mean = ginis.reduce((a, b) => a + b, 0) / ginis.length;
    const variance = ginis.reduce((a, b) => a + (b - mean) ** 2, 0) / ginis.length;
    // Standard errors: sqrt(1/60 / 20,000) = 0.0009; of the variance about 1 %.
    expect(Math.abs(mean - 0.5)).toBeLessThan(0.004);
    expect(Math.abs(variance * 60 - 1)).toBeLessThan(0.04);
    for (const level of [0.01, 0.05, 0.5]) {
      const below = simulated.filter((s) => (s?.p ?? 1) <= level).length / simulated.length;
      // Four standard errors.
      expect(Math.abs(below - level)).toBeLessThan(4 * Math.sqrt((level * (1 - level)) / 20_000));
    }
  });
  test('equal durations are never an exponential; fewer than two say nothing', () => {
    expect(exponentialSpread([7, 7, 7])).toEqual({ gini: 0, p: 0 });
    expect(exponentialSpread([7])).toBeNull();
    expect(exponentialSpread([0, 0])).toBeNull();
  });
});
