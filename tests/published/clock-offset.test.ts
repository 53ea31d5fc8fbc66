/**
 * Source: robust estimate on constructed data (reference values of the project): differences 2.013, 1.998, 2.004, 2.35,
 * 2.001 s; median 2.004, median absolute deviation 0.006. By hand: sorted 1.998 2.001 2.004 2.013 2.35, the middle is
 * 2.004; deviations 0.009 0.006 0 0.346 0.003, sorted 0 0.003 0.006 0.009 0.346. Tolerance 1e-9.
 */
import { expect, test } from 'vitest';
import { medianOffset } from '../../src/statistics/median-offset.ts';

test('one mispaired event does not move the median', () => {
  const found = medianOffset([2.013, 1.998, 2.004, 2.35, 2.001]);
  expect(found?.median).toBeCloseTo(2.004, 9);
  expect(found?.spread).toBeCloseTo(0.006, 9);
  expect(found?.count).toBe(5);
  expect(medianOffset([])).toBeNull();
});
