import { expect, test } from 'vitest';
import { calibrate, isHeld } from '../calibration/calibrate.ts';

// At 1 % of 60: 3 or more have the chance 0.02, 6 or more 60! / (6! 54!) 0.01^6 0.99^54 = 5.0e7 * 1e-12 * 0.58 = 0.00003.
test.each([
  [{ low: 0, high: 0.01 }, 3, 60, true],
  [{ low: 0, high: 0.01 }, 6, 60, false],
  [{ low: 0.95, high: 1 }, 60, 60, true],
  // 0.95^20 = 0.36 of none wrong; six wrong of twenty: 38760 * 0.05^6 * 0.95^14 = 0.0003.
  [{ low: 0.95, high: 1 }, 14, 20, false],
])('of a promise of %j %i of %i hold it: %s', (promised, hits, cases, expected) => {
  expect(isHeld({ setting: '', promised, hits, cases })).toBe(expected);
});

test('the table ends with how many promises were tried and not held', () => {
  expect(calibrate('0.01', 'Poisson').split('\n').at(-1)).toBe(
    '10 promises tried, 0 not held for the reason given, 0 not held without one; seed 1, scale 0.01',
  );
});
