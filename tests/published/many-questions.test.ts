/**
 * Holm's adjustment: the recipe of Holm, Scandinavian Journal of Statistics 6 (1979), section 3 (from memory), worked by hand.
 * The chance of at least so many of several unlike events: worked by hand, and for like events the binomial tail.
 */
import { describe, expect, test } from 'vitest';
import { dealtChance, type Scored } from '../../src/statistics/dealt-labels.ts';
import { holm } from '../../src/statistics/holm.ts';
import { logRank, logRankScores } from '../../src/statistics/log-rank.ts';
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

describe('labels dealt out again', () => {
  const dealing = { rounds: 19_999, mostSteps: 20_000_000, seed: 1 };
  const scored = (group: string, ...scores: readonly number[]): readonly Scored[] =>
    scores.map((score) => ({ group, score }));
  // Of the 20 ways to deal three of six, two part the low from the high ones: 0.1; three standard errors of 20,000 deals are 0.0064.
  test('part two groups of three as cleanly in two of twenty deals', () => {
    const chance = dealtChance([[...scored('a', 1, 2, 3), ...scored('b', 7, 8, 9)]], dealing);
    expect(Math.abs((chance ?? 0) - 0.1)).toBeLessThan(0.0064);
  });
  // Two strata of one against one: the same way round in both, in 2 of 4 deals.
  test('stay within their stratum', () => {
    const stratum = [...scored('a', 1), ...scored('b', 2)];
    const chance = dealtChance([stratum, stratum.map((s) => ({ ...s, score: s.score + 100 }))], dealing);
    expect(Math.abs((chance ?? 0) - 0.5)).toBeLessThan(0.0107);
  });
  test('say nothing of one group, nor of scores that are all alike', () => {
    expect(dealtChance([scored('a', 1, 2, 3)], dealing)).toBeNull();
    expect(dealtChance([[...scored('a', 1, 1), ...scored('b', 1)]], dealing)).toBeNull();
    expect(dealtChance([], dealing)).toBeNull();
  });
});

describe('scores of the log-rank test', () => {
  // One of three ends at 1 s, one is watched for 2 s only, the last ends at 3 s: hazards 1/3, nothing, and 1.
  test('by hand', () => {
    const scores = logRankScores([
      { seconds: 3, isCensored: false },
      { seconds: 1, isCensored: false },
      { seconds: 2, isCensored: true },
    ]);
    for (const [index, expected] of [-1 / 3, 2 / 3, -1 / 3].entries())
      expect(scores[index]).toBeCloseTo(expected, 12);
  });
  test('add up in each group to the ends observed less those expected', () => {
    const times = [5, 5, 6, 8, 8, 8, 11].map((seconds, index) => ({
      seconds,
      isCensored: index % 3 === 2,
      group: index % 2 === 0 ? 'a' : 'b',
    }));
    const scores = logRankScores(times);
    for (const { group, observed, expected } of logRank([times])?.groups ?? []) {
      const sum = scores.reduce(
        (total, score, index) => (times[index]?.group === group ? total + score : total),
        0,
      );
      expect(sum).toBeCloseTo(observed - expected, 12);
    }
  });
});
