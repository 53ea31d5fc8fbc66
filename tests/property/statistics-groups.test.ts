/** Laws of the comparison of groups, for any input: no figure is NaN, the order of rows irrelevant. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { intervalLogRank } from '../../src/statistics/interval-log-rank.ts';
import { logRank } from '../../src/statistics/log-rank.ts';
import { expectFigures, expectOrder } from '../support/figures.ts';

const run = { numRuns: 300, seed: 20_261_125 };
const seconds = fc.oneof(fc.integer({ min: 0, max: 20 }), fc.double({ min: 0, max: 1e6, noNaN: true }));
const group = fc.constantFrom('a', 'b', 'c');
const times = fc.array(fc.record({ seconds, isCensored: fc.boolean(), group }), { maxLength: 30 });
const intervals = fc.array(
  fc
    .record({ low: seconds, width: fc.oneof(seconds, fc.constantFrom(0, Infinity)), group })
    .map(({ low, width, ...rest }) => ({ low, high: low + width, ...rest })),
  { maxLength: 30 },
);

describe('groups', () => {
  test('a difference is a figure or null, whatever the order of rows', () => {
    fc.assert(
      fc.property(fc.array(times, { maxLength: 3 }), (strata) => {
        const found = logRank(strata);
        expectFigures(found);
        expectOrder(0, found?.p, 1);
        const reversed = logRank(strata.map((stratum) => [...stratum].reverse()).reverse());
        expect(reversed?.df).toBe(found?.df);
        expect(reversed?.chiSquare ?? 0).toBeCloseTo(found?.chiSquare ?? 0, 6);
      }),
      run,
    );
  });

  test('so is one of intervals', () => {
    fc.assert(
      fc.property(fc.array(intervals, { maxLength: 3 }), (strata) => {
        const found = intervalLogRank(strata);
        expectFigures(found);
        expectOrder(0, found?.p, 1);
      }),
      run,
    );
  });

  // A time within a billionth of a second is a point: the way of places and that of points give the same scores.
  test('points and intervals too narrow to matter score alike', () => {
    const whole = fc.array(
      fc.record({ low: fc.integer({ min: 1, max: 20 }), isCensored: fc.boolean(), group }),
      { maxLength: 30 },
    );
    fc.assert(
      fc.property(whole, (sample) => {
        const scoresOf = (width: number): readonly number[] | undefined =>
          intervalLogRank([
            sample.map(({ low, isCensored, group: name }) => ({
              group: name,
              low: isCensored ? low : low - width,
              high: isCensored ? Infinity : low,
            })),
          ])?.scores.map(({ score }) => score);
        const [points, narrow] = [scoresOf(0), scoresOf(1e-9)];
        expect(points?.length).toBe(narrow?.length);
        for (const [index, score] of points?.entries() ?? []) expect(narrow?.[index]).toBeCloseTo(score, 3);
      }),
      run,
    );
  });

  // A group beside its own copy: nothing to tell them apart.
  test('alike groups differ by nothing', () => {
    fc.assert(
      fc.property(times, (sample) => {
        const twice = ['x', 'y'].flatMap((name) => sample.map((time) => ({ ...time, group: name })));
        expect(logRank([twice])?.chiSquare ?? 0).toBeCloseTo(0, 9);
      }),
      run,
    );
  });

  // By hand, one end each, both watched at the first: observed 1, expected 1/2, variance 1/4, so chi-square 1. A second such
  // stratum doubles the deviation (1) and the variance (1/2): chi-square 2. In one stratum it would be pooled.
  test('strata are compared within themselves and put together', () => {
    const stratum = [
      { seconds: 1, isCensored: false, group: 'a' },
      { seconds: 2, isCensored: false, group: 'b' },
    ];
    expect(logRank([stratum])).toMatchObject({ chiSquare: 1, df: 1 });
    const later = stratum.map((time) => ({ ...time, seconds: time.seconds + 10 }));
    expect(logRank([stratum, later])?.chiSquare).toBeCloseTo(2, 12);
    expect(logRank([[...stratum, ...later]])?.chiSquare).toBeLessThan(1.9);
  });

  // By hand: a, b, c end at 1, 2, 3. Deviations of a and b: 1 - 1/3 = 2/3 and 1 - 1/3 - 1/2 = 1/6; their covariance is
  // [[2/9, -1/9], [-1/9, 2/9 + 1/4 = 17/36]], its determinant 2/9 * 17/36 - 1/81 = 5/54. The form by the adjoint, over that.
  test('three groups have two degrees of freedom', () => {
    const found = logRank([
      ['a', 'b', 'c'].map((name, index) => ({ seconds: index + 1, isCensored: false, group: name })),
    ]);
    const adjoint = (17 / 36) * (4 / 9) + 2 * (1 / 9) * (2 / 3) * (1 / 6) + (2 / 9) * (1 / 36);
    expect(found?.df).toBe(2);
    expect(found?.chiSquare).toBeCloseTo(adjoint / (5 / 54), 12);
  });

  test.each([
    ['nothing', []],
    ['one time', [{ seconds: 5, isCensored: false, group: 'a' }]],
    ['one group', [5, 6].map((time) => ({ seconds: time, isCensored: false, group: 'a' }))],
    ['all censored', ['a', 'b'].map((name) => ({ seconds: 5, isCensored: true, group: name }))],
  ])('nothing can be compared: %s', (_name, sample) => {
    expect(logRank([sample])).toBeNull();
    const between = sample.map(({ seconds: low, isCensored, group: name }) => ({
      low,
      high: isCensored ? Infinity : low,
      group: name,
    }));
    expect(intervalLogRank([between])).toBeNull();
  });
});
