/**
 * Source: Moran, The random division of an interval, part II, J. R. Stat. Soc. B 13 (1951): nearly chi-square (from
 * memory). For two spacings the exact distribution is known: their share u of the whole is uniform, so that the statistic
 * is -2 ln(4 u (1 - u)) / 1.25, and P[statistic <= b] = P[4 u (1 - u) >= e^(-0.625 b)] = |1 - 2 u|. Tolerance: 0.01, the
 * error of the approximation. For more spacings there is no such form; a seeded simulation stands in for it.
 */
import { expect, test } from 'vitest';
import { spacingRegularity } from '../../src/statistics/spacing-regularity.ts';

test.each([0.51, 0.55, 0.6, 0.7, 0.8, 0.9, 0.99])('two spacings, the first %d of the whole', (share) => {
  expect(spacingRegularity([share, 1 - share]).p).toBeCloseTo(Math.abs(1 - 2 * share), 2);
});

// By hand: mean 10, deviations -2, 0, 2, variance (4 + 0 + 4) / 2 = 4, so the coefficient is 2 / 10.
test('says mean and coefficient of variation', () => {
  const { mean, variation } = spacingRegularity([8, 10, 12]);
  expect(mean).toBe(10);
  expect(variation).toBeCloseTo(0.2, 12);
});

test('a strict rhythm is never chance, and two events at once are no rhythm', () => {
  expect(spacingRegularity([60, 60, 60]).p).toBe(0);
  expect(spacingRegularity([60, 0, 60]).p).toBe(1);
});

/** Uniform numbers of a linear congruential generator. Source: Park and Miller, Comm. ACM 31 (1988): 16807, 2^31 - 1. */
function uniforms(seed: number, count: number): readonly number[] {
  const drawn: number[] = [];
  let state = seed;
  for (let index = 0; index < count; index += 1) {
    state = (state * 16_807) % 2_147_483_647;
    drawn.push(state / 2_147_483_647);
  }
  return drawn;
}

// Of 40000 samples of exponential spacings a share `level` must have p <= level; the band is four standard errors,
// 4 sqrt(level / 40000), beside a tenth of the level for the approximation.
test.each([
  [5, 0.005],
  [5, 0.05],
  [9, 0.005],
  [9, 0.05],
])('%d spacings by chance are called even at the level %d as often as that says', (count, level) => {
  const samples = 40_000;
  const drawn = uniforms(20_261_125 + count, samples * count);
  let even = 0;
  for (let sample = 0; sample < samples; sample += 1) {
    const spacings = drawn.slice(sample * count, (sample + 1) * count).map((u) => -Math.log(u));
    if (spacingRegularity(spacings).p <= level) even += 1;
  }
  const band = 4 * Math.sqrt(level / samples) + level / 10;
  expect(Math.abs(even / samples - level)).toBeLessThan(band);
});
