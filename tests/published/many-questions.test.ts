/**
 * Holm's adjustment: the recipe of Holm, Scandinavian Journal of Statistics 6 (1979), section 3 (from memory), worked by hand.
 * The chance of at least so many of several unlike events: worked by hand, and for like events the binomial tail.
 */
import { describe, expect, test } from 'vitest';
import { holm } from '../../src/statistics/holm.ts';
import { permutationChance } from '../../src/statistics/permutation-chance.ts';
import { atLeastOf } from '../../src/statistics/poisson-binomial.ts';
import { atLeast } from '../../src/statistics/rate-ratio.ts';

describe('Holm', () => {
  // In order 0.005 * 4, 0.01 * 3, 0.03 * 2, 0.04 * 1; the last is no less than the one before it.
  test('takes each p for those that are no less', () => {
    const found = holm([0.01, 0.04, 0.03, 0.005]);
    for (const [index, expected] of [0.03, 0.06, 0.06, 0.02].entries())
      expect(found[index]).toBeCloseTo(expected, 12);
  });
  test('says nothing above 1, and nothing of nothing', () => {
    expect(holm([0.9, 0.8])).toEqual([1, 1]);
    expect(holm([])).toEqual([]);
  });
});

describe('at least so many of several events', () => {
  // 0.1, 0.2 and 0.5: all three 0.01; two of them 0.1*0.2*0.5 + 0.1*0.8*0.5 + 0.9*0.2*0.5 = 0.01 + 0.04 + 0.09.
  test('of unlike chances', () => {
    expect(atLeastOf([0.1, 0.2, 0.5], 3)).toBeCloseTo(0.01, 12);
    expect(atLeastOf([0.1, 0.2, 0.5], 2)).toBeCloseTo(0.15, 12);
    expect(atLeastOf([0.1, 0.2, 0.5], 1)).toBeCloseTo(1 - 0.9 * 0.8 * 0.5, 12);
    expect([atLeastOf([0.1], 0), atLeastOf([0.1], 2), atLeastOf([], 1)]).toEqual([1, 0, 0]);
  });
  test('of like chances is binomial, also far out', () => {
    const like = Array.from({ length: 40 }, () => 0.05);
    for (const count of [1, 4, 12, 30])
      expect(atLeastOf(like, count) / atLeast(count, 40, 0.05)).toBeCloseTo(1, 9);
  });
  test('keeps its digits where all of many must happen', () => {
    expect(atLeastOf([1e-9, 1e-9, 1e-9], 3) / 1e-27).toBeCloseTo(1, 12);
  });
});

describe('groups dealt out at random', () => {
  // Of the 20 ways to deal three of six, two part the low from the high ones: 0.1; three standard errors of 20,000 deals are 0.0064.
  test('part two groups of three as cleanly in two of twenty deals', () => {
    const scored = [-4, -3, -2, 2, 3, 4].map((score) => ({ group: score < 0 ? 'a' : 'b', score }));
    const chance = permutationChance(scored, { seed: 1, rounds: 20_000 });
    expect(Math.abs(chance - 0.1)).toBeLessThan(0.0064);
  });
});
