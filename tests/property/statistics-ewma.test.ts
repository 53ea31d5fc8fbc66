/** Laws of the moving average of sync times, for any input. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seeded } from '../../samples/random.ts';
import { ewma, reachInAnyOrder, usualOf } from '../../src/statistics/ewma.ts';
import { expectFigures, expectOrder } from '../support/figures.ts';

const run = { numRuns: 300, seed: 20_261_125 };
const seconds = fc.oneof(fc.integer({ min: 0, max: 20 }), fc.double({ min: 0, max: 1e6, noNaN: true }));
const values = fc.array(
  fc.oneof(fc.integer({ min: -3, max: 3 }), fc.double({ min: -1e6, max: 1e6, noNaN: true })),
  {
    maxLength: 20,
  },
);

describe('a moving average', () => {
  test('a moving average stays between the least and the greatest', () => {
    fc.assert(
      fc.property(values, (sample) => {
        const averages = ewma(sample, 0.2, 0);
        expectFigures(averages);
        expect(averages.length).toBe(sample.length);
        for (const average of averages) expectOrder(Math.min(0, ...sample), average, Math.max(0, ...sample));
      }),
      run,
    );
  });

  test('a moving average strays no farther than its values do, and where all are equal not at all', () => {
    const shuffling = { weight: 0.3, significance: 0.05, rounds: 39, seed: 1 };
    fc.assert(
      fc.property(fc.array(seconds, { minLength: 2, maxLength: 30 }), (sample) => {
        const reach = reachInAnyOrder(sample, shuffling);
        expectOrder(0, reach, Math.max(...sample) - Math.min(...sample) + 1e-6);
        expect(reachInAnyOrder(sample, shuffling)).toBe(reach);
        expect(
          reachInAnyOrder(
            sample.map(() => 7),
            shuffling,
          ),
        ).toBe(0);
      }),
      run,
    );
  });

  // Powers of even shares, some a thousand times the middle: no sync times are as skewed. At 5 % of 400, with three standard errors, 33 at most.
  test('in at most the promised share of skewed series does the average stray farther', () => {
    const random = seeded(1);
    const outside = Array.from({ length: 400 }, () => {
      const sample = Array.from({ length: 20 }, () => random() ** -1.5);
      const target = usualOf(sample);
      const reach = reachInAnyOrder(sample, { weight: 0.3, significance: 0.05, rounds: 100, seed: 1 });
      return ewma(sample, 0.3, target).some((average) => Math.abs(average - target) > reach);
    }).filter((isOutside) => isOutside).length;
    expect(outside).toBeLessThanOrEqual(33);
    expect(outside).toBeGreaterThan(5);
  });
});
