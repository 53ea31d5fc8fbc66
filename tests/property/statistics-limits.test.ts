/** Laws of rates, trends and limits, for any input: no figure is NaN, limits in order. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { benjaminiHochberg } from '../../src/statistics/benjamini-hochberg.ts';
import { bootstrap } from '../../src/statistics/bootstrap.ts';
import { laplaceTrend } from '../../src/statistics/laplace-trend.ts';
import { mannKendall } from '../../src/statistics/mann-kendall.ts';
import { poissonLimits } from '../../src/statistics/poisson-limits.ts';
import { powerLawTrend } from '../../src/statistics/power-law-trend.ts';
import { predictCount } from '../../src/statistics/predict-count.ts';
import { predictTotals } from '../../src/statistics/predict-totals.ts';
import { quantileLimits } from '../../src/statistics/quantile-limits.ts';
import { survivalLimits } from '../../src/statistics/survival-limits.ts';
import { theilSen } from '../../src/statistics/theil-sen.ts';
import { upperToleranceLimit } from '../../src/statistics/tolerance-limit.ts';
import { expectFigures, expectOrder } from '../support/figures.ts';

const run = { numRuns: 300, seed: 20_261_125 };
const seconds = fc.oneof(fc.integer({ min: 0, max: 20 }), fc.double({ min: 0, max: 1e6, noNaN: true }));
const values = fc.array(
  fc.oneof(fc.integer({ min: -3, max: 3 }), fc.double({ min: -1e6, max: 1e6, noNaN: true })),
  {
    maxLength: 20,
  },
);

describe('rates and trends', () => {
  test('a rate lies within its limits; without exposure there is none', () => {
    fc.assert(
      fc.property(
        fc.nat({ max: 2000 }),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        (count, exposure) => {
          const found = poissonLimits({ count, exposure });
          expectFigures(found);
          expectOrder(0, found?.low, found?.value, found?.high);
          expect(found).not.toBeNull();
          expect(poissonLimits({ count, exposure: 0 })).toBeNull();
        },
      ),
      run,
    );
  });

  test('adjusting never lowers a p-value nor changes their order', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 20 }), (pValues) => {
        const adjusted = benjaminiHochberg(pValues);
        expectFigures(adjusted);
        for (const [index, p] of pValues.entries()) expectOrder(p, adjusted[index], 1);
        const byP = [...pValues.keys()].sort((a, b) => (pValues[a] ?? 0) - (pValues[b] ?? 0));
        expectOrder(...byP.map((index) => adjusted[index]));
      }),
      run,
    );
  });

  test('trends of events and of values are figures or null', () => {
    fc.assert(
      fc.property(fc.array(seconds, { maxLength: 20 }), seconds, values, (events, end, sample) => {
        expectFigures([laplaceTrend(events, end), powerLawTrend(events, end)]);
        expectFigures([laplaceTrend(events, 1e6), powerLawTrend(events, 1e6)]);
        expectFigures(mannKendall(sample));
        const slope = theilSen(sample.map((value, index) => ({ time: events[index] ?? 0, value })));
        expectFigures(slope);
        expectOrder(slope?.low, slope?.slope, slope?.high);
      }),
      run,
    );
  });

  test('nothing is said of no event, no time, no value', () => {
    expect([laplaceTrend([], 5), laplaceTrend([0], 0), powerLawTrend([], 5), powerLawTrend([5], 5)]).toEqual([
      null,
      null,
      null,
      null,
    ]);
    expect([mannKendall([]), mannKendall([1]), theilSen([]), theilSen([{ time: 1, value: 2 }])]).toEqual([
      null,
      null,
      null,
      null,
    ]);
    expect(mannKendall([4, 4, 4])).toEqual({ score: 0, variance: 0, z: 0, p: 1 });
  });
});

describe('limits', () => {
  test('a tolerance limit is a value of the sample, or null with fewer than it needs', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(seconds, fc.constant(Infinity)), { maxLength: 120 }), (sample) => {
        const found = upperToleranceLimit(sample, { coverage: 0.95, confidence: 0.95 });
        expectFigures(found);
        if (sample.length < 59) expect(found.value).toBeNull();
        if (found.value !== null) expect(sample).toContain(found.value);
      }),
      run,
    );
  });

  test('limits of a quantile hold what the bounds leave open', () => {
    const between = fc
      .tuple(seconds, seconds)
      .map(([a, b]) => ({ low: Math.min(a, b), high: Math.max(a, b) }));
    fc.assert(
      fc.property(fc.array(between, { maxLength: 80 }), fc.constantFrom(0.1, 0.5, 0.95), (sample, share) => {
        const found = quantileLimits(sample, share);
        const inside = quantileLimits(
          sample.map(({ low, high }) => ({ low: (low + high) / 2, high: (low + high) / 2 })),
          share,
        );
        expectOrder(found.low ?? 0, inside.low ?? 0);
        expectOrder(inside.high ?? 1e9, found.high ?? 1e9);
      }),
      run,
    );
  });

  test('limits of a share unfinished are in order, and wider for wider bounds', () => {
    const between = fc
      .tuple(seconds, seconds)
      .map(([a, b]) => ({ low: Math.min(a, b), high: Math.max(a, b) }));
    fc.assert(
      fc.property(fc.array(between, { minLength: 1, maxLength: 40 }), seconds, (sample, at) => {
        const found = survivalLimits(sample)(at);
        expectOrder(0, found.low, found.high, 1);
        const middles = sample.map(({ low, high }) => ({ low: (low + high) / 2, high: (low + high) / 2 }));
        const inside = survivalLimits(middles)(at);
        expectOrder(found.low, inside.low + 1e-12);
        expectOrder(inside.high, found.high + 1e-12);
      }),
      run,
    );
  });

  test('a prediction of a total is in order and the same again, and none where nothing succeeded', () => {
    const tries = fc.array(
      fc.record({ time: seconds, width: fc.constantFrom(0, 2), succeeded: fc.boolean() }),
      {
        maxLength: 20,
      },
    );
    fc.assert(
      fc.property(tries, fc.integer(), (sample, seed) => {
        const sizes = [1, 5, 3000];
        const again = () => predictTotals(sample, sizes, { seed, rounds: 50, confidence: 0.9 });
        const found = again();
        expectFigures(found);
        for (const one of found) expectOrder(0, one?.low, one?.value, one?.high);
        expect(again()).toEqual(found);
        if (!sample.some((one) => one.succeeded)) expect(found).toEqual(sizes.map(() => null));
      }),
      { ...run, numRuns: 100 },
    );
  });

  test('a prediction of a count holds what is expected, rises with the count and is wider when surer', () => {
    fc.assert(
      fc.property(
        fc.nat({ max: 5000 }),
        fc.double({ min: 0.01, max: 1000, noNaN: true }),
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        (count, exposure, time) => {
          const found = predictCount({ count, exposure }, time);
          const [more, surer] = [
            predictCount({ count: count + 1, exposure }, time),
            predictCount({ count, exposure }, time, 0.99),
          ];
          expectFigures([found, more, surer]);
          expectOrder(0, surer?.low, found?.low, Math.ceil(found?.value ?? 0), (found?.high ?? 0) + 1);
          expectOrder(found?.high, surer?.high);
          expectOrder(found?.low, more?.low);
          expectOrder(found?.high, more?.high);
          expect(predictCount({ count, exposure: 0 }, time)).toBeNull();
        },
      ),
      run,
    );
  });

  test('a bootstrap interval is in order and the same again; without a figure it is null', () => {
    fc.assert(
      fc.property(values, fc.integer(), (sample, seed) => {
        const again = () =>
          bootstrap(sample, (drawn) => drawn[0] ?? null, { seed, rounds: 50, confidence: 0.9 });
        const found = again();
        expectFigures(found);
        expectOrder(found?.low, found?.median, found?.high);
        expect(again()).toEqual(found);
        expect(found === null).toBe(sample.length === 0);
        const none = bootstrap(sample, () => null, { seed, rounds: 50, confidence: 0.9 });
        expect(none).toEqual(sample.length === 0 ? null : { median: null, low: null, high: null });
      }),
      run,
    );
  });
});
