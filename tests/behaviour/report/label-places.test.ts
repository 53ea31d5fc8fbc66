import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { labelPlaces } from '../../../src/report/label-places.ts';

describe('places of labels', () => {
  test('are those of their lines where there is room', () => {
    expect(labelPlaces([80, 10, 40], 8, 100)).toEqual([80, 10, 40]);
  });
  // By hand: 50 stays, the next must be at least 58; at the top 100 stays and the others go down, 92 and 84.
  test('keep apart those that lie close, in their order', () => {
    expect(labelPlaces([50, 50, 10], 8, 100)).toEqual([50, 58, 10]);
    expect(labelPlaces([100, 100, 100], 8, 100)).toEqual([84, 92, 100]);
  });
  test('of no label and of one are none and its own', () => {
    expect([labelPlaces([], 8, 100), labelPlaces([3], 8, 100)]).toEqual([[], [3]]);
  });
  test('are apart, below the top and in the order of the values, whatever these are', () => {
    const values = fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { maxLength: 9 });
    fc.assert(
      fc.property(values, (given) => {
        const places = labelPlaces(given, 8, 100);
        const sorted = [...places].sort((a, b) => a - b);
        for (const [index, place] of sorted.entries()) {
          expect(place).toBeLessThanOrEqual(100);
          if (index > 0) expect(place - (sorted[index - 1] ?? 0)).toBeGreaterThanOrEqual(8 - 1e-9);
        }
        for (const [i, a] of given.entries())
          for (const [j, b] of given.entries()) if (a < b) expect(places[i]).toBeLessThan(places[j] ?? 0);
      }),
    );
  });
});
