import { describe, expect, test } from 'vitest';
import { boutsAhead, type PairBouts } from '../../../src/fleet/bouts-ahead.ts';
import { defaultFleetLimits, yearSeconds } from '../../../src/fleet/limits.ts';

const yearMs = yearSeconds * 1000;
const hourMs = 3_600_000;

/** A pair observed for so many years, with bouts at these times in milliseconds. */
function pairOf(pair: string, years: number, times: readonly number[]): PairBouts {
  return {
    pair,
    observed: [{ from: 0, to: years * yearMs }],
    bouts: times.map((time) => ({ time })),
  };
}

const ahead = (...fleet: readonly PairBouts[]): ReturnType<typeof boutsAhead> =>
  boutsAhead(fleet, defaultFleetLimits);
const daily = (count: number, from = 0): readonly number[] =>
  Array.from({ length: count }, (_, i) => from + i * 24 * hourMs);

describe('the bouts of the next year', () => {
  // 24 in five years give 1 to 10 for the next: tests/support/check-values/bounded.ts has the arithmetic.
  test('of one pair are those that its past does not speak against', () => {
    const found = ahead(pairOf('RO1', 5, daily(24)));
    expect(found).toMatchObject({ bouts: 24, low: 1, high: 10 });
    expect(found?.value).toBeCloseTo(4.8, 9);
    expect(found?.pairs).toMatchObject([{ pair: 'RO1', bouts: 24, low: 1, high: 10 }]);
  });

  test('are not said of a pair observed for less than 30 days', () => {
    expect(ahead(pairOf('RO1', 29 / 365.25, daily(3)))).toBeNull();
    expect(ahead(pairOf('RO1', 31 / 365.25, daily(3)), pairOf('RO2', 0.01, daily(1)))?.pairs).toHaveLength(1);
  });

  // Twelve bouts of each of two pairs in five years, apart or at the same time: 24 bouts, but 12 waves of two. Of 12 + y waves y fall into
  // the last of six years: P[X <= 0 of 12] = (5/6)^12 = 0.112 is not below 0.025, so none may come; P[X >= 7 of 19] = 0.028 (binomial,
  // 1/6) is above 0.025, P[X >= 8 of 20] = 0.011 below: 7 waves, 14 bouts.
  test('scatter more where those of several pairs come together', () => {
    const apart = ahead(pairOf('RO1', 5, daily(12)), pairOf('RO2', 5, daily(12, 12 * hourMs)));
    const together = ahead(pairOf('RO1', 5, daily(12)), pairOf('RO2', 5, daily(12, 600_000)));
    expect(apart).toMatchObject({ low: 1, high: 10 });
    expect(together).toMatchObject({ low: 0, high: 14 });
    expect(together?.value).toBeCloseTo(apart?.value ?? 0, 9);
  });
});
