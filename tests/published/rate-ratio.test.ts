/**
 * Source: the manual of R 4.2.2, poisson.test, second example (11 events in 800, 21 in 3011), after Dobson, Kuulasmaa,
 * Eberle and Scherer, Statistics in Medicine 10 (1991). Limits as R computes them. Tolerance: relative 1e-6.
 */
import { describe, expect, test } from 'vitest';
import { atLeast, rateRatio } from '../../src/statistics/rate-ratio.ts';

describe('exact rate ratio', () => {
  const found = rateRatio({ count: 11, exposure: 800 }, { count: 21, exposure: 3011 }, 0.95);
  test.each([
    ['ratio', found?.ratio, 1.971488095],
    ['low', found?.low, 0.8584264034],
    ['high', found?.high, 4.2772659437],
  ])('%s', (_name, value, printed) => {
    expect(Math.abs((value ?? Number.NaN) / printed - 1)).toBeLessThan(1e-6);
  });
  test('p is the upper binomial tail: 3 of 3 with a third is 1 in 27', () => {
    expect(atLeast(3, 3, 1 / 3)).toBeCloseTo(1 / 27, 12);
    expect(rateRatio({ count: 3, exposure: 1 }, { count: 0, exposure: 2 }, 0.95)?.p).toBeCloseTo(1 / 27, 12);
  });
  test('far out in the tail: 30 of 30 with a twentieth is the thirtieth power of it', () => {
    expect(atLeast(30, 30, 0.05) / 0.05 ** 30).toBeCloseTo(1, 6);
    expect(atLeast(0, 3, 0.5)).toBe(1);
    expect(atLeast(3, 3, 0)).toBe(0);
    expect(atLeast(3, 3, 1)).toBe(1);
  });
  test('nothing can be said without events or exposure; no upper limit without events of the second', () => {
    expect(rateRatio({ count: 0, exposure: 1 }, { count: 0, exposure: 1 }, 0.95)).toBeNull();
    expect(rateRatio({ count: 1, exposure: 0 }, { count: 1, exposure: 1 }, 0.95)).toBeNull();
    expect(rateRatio({ count: 2, exposure: 1 }, { count: 0, exposure: 1 }, 0.95)).toMatchObject({
      ratio: null,
      high: null,
    });
  });
});
