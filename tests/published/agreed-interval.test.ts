/**
 * Sources: RFC 5905, Network Time Protocol Version 4 (2010), section 11.2.1: the interval that the most candidates
 * contain. Worked examples of Marzullo's algorithm, given as value and half-width: 10 and 2, 12 and 1, 11 and 1 agree on
 * 11.5 and 0.5; with 14.5 and 0.5 in place of the third, two agree on 11.5 and 0.5 (from memory). Exact.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { agreedInterval } from '../../src/statistics/agreed-interval.ts';

const about = (value: number, half: number): { low: number; high: number } => ({
  low: value - half,
  high: value + half,
});

test('all agree, or most do', () => {
  expect(agreedInterval([about(10, 2), about(12, 1), about(11, 1)])).toEqual({ low: 11, high: 12, count: 3 });
  expect(agreedInterval([about(10, 2), about(12, 1), about(14.5, 0.5)])).toEqual({
    low: 11,
    high: 12,
    count: 2,
  });
  expect(agreedInterval([about(1, 1), about(3, 1)])).toEqual({ low: 2, high: 2, count: 2 });
  expect(agreedInterval([])).toBeNull();
});

test('no point lies in more intervals than the one found', () => {
  const interval = fc
    .tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 12 }))
    .map(([low, width]) => ({
      low,
      high: low + width,
    }));
  fc.assert(
    fc.property(fc.array(interval, { minLength: 1, maxLength: 12 }), (intervals) => {
      const covering = (at: number): number => intervals.filter((i) => i.low <= at && at <= i.high).length;
      const found = agreedInterval(intervals);
      // Ends are whole numbers: the most covered point is one of them.
      const most = Math.max(...Array.from({ length: 54 }, (_, at) => covering(at)));
      expect([found?.count, covering(found?.low ?? -1), covering(found?.high ?? -1)]).toEqual([
        most,
        most,
        most,
      ]);
    }),
    { seed: 4 },
  );
});
