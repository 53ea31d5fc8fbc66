import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { StaffRow } from '../../../src/charts/staff.ts';
import { wordRows } from '../../../src/report/staff-words.ts';

const wide = 1000;
const words = (rows: readonly StaffRow[]): readonly StaffRow[] => rows.filter((r) => r.mark === 'word');

test('a word alone stands in the row nearest to its line', () => {
  const rows = wordRows([{ time: 10, text: 'removed' }], 1, 1, 1, wide);
  expect(words(rows).map((r) => [r.text, r.x])).toEqual([['removed', 10]]);
  expect(words(rows)[0]?.y).toBeCloseTo(1.4, 9);
});
test('of two that are close the left one moves away from the line', () => {
  const [inserted, removed] = words(
    wordRows(
      [
        { time: 10, text: 'removed' },
        { time: 20, text: 'inserted' },
      ],
      1,
      1,
      1,
      wide,
    ),
  );
  expect(inserted?.text).toBe('inserted');
  expect(removed?.text).toBe('removed');
  expect(removed?.y).toBeGreaterThan(inserted?.y ?? Number.POSITIVE_INFINITY);
});
test('what has no room in four rows, or runs past the end, is left out', () => {
  const close = [0, 1, 2, 3, 4].map((time) => ({ time, text: `word ${time}` }));
  expect(words(wordRows(close, 1, 1, 1, wide)).map((r) => r.text)).toEqual([
    'word 4',
    'word 3',
    'word 2',
    'word 1',
  ]);
  expect(wordRows([{ time: 990, text: 'removed' }], 1, 1, 1, wide)).toEqual([]);
});
test('no word meets another word or a leader, wherever they fall', () => {
  const word = fc.record({
    time: fc.integer({ min: 0, max: 900 }),
    text: fc.stringMatching(/^[a-z]{1,12}$/),
  });
  fc.assert(
    fc.property(
      fc.array(word, { maxLength: 12 }),
      fc.constantFrom(1 as const, -1 as const),
      (given, away) => {
        const rows = wordRows(given, 1, away, 1, wide);
        // 7 units a letter: what the estimate of 13 px sans text comes to.
        for (const a of words(rows))
          for (const b of rows) {
            const reach = b.mark === 'word' ? a.y === b.y : Math.abs(b.y2 - 1) >= Math.abs(a.y - 1);
            if (b.x > a.x && reach) expect(a.x + a.text.length * 7).toBeLessThanOrEqual(b.x);
          }
      },
    ),
  );
});
