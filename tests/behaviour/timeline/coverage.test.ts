import { expect, test } from 'vitest';
import { totalWithin } from '../../../src/timeline/coverage.ts';

const span = (from: number, to: number): { from: number; to: number } => ({ from, to });

test('what lies within windows that overlap and come in any order', () => {
  // Within: 5 to 14, and 18 to 20.
  expect(totalWithin([span(0, 20)], [span(10, 13), span(5, 14), span(18, 30)])).toBe(11);
  // What was not observed counts neither way: 3 to 5 is left.
  expect(totalWithin([span(0, 5), span(15, 20)], [span(3, 15)])).toBe(2);
  expect(totalWithin([], [span(0, 1)])).toBe(0);
});
