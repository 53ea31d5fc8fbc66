import { describe, expect, test } from 'vitest';
import { epochCount, secondsSince } from '../../../../src/import/clock/stamp-counts.ts';

const none = { order: undefined, year: undefined, day: undefined };
const start = Date.UTC(2026, 2, 14, 8);

describe('seconds since an instant', () => {
  const since = secondsSince(start);
  test.each([
    // Text, milliseconds after the start, where the stamp ends.
    ['12', 12_000, 2],
    ['12.345678', 12_345, 9],
    ['  12.5', 12_500, 6],
    ['[   12.345678] role active', 12_345, 14],
    ['[12] role active', 12_000, 4],
    ['( 0.000001 )', 0, 12],
    ['<7.1>', 7100, 5],
    ['12,25;next', 12_250, 5],
    ['12.5: role active', 12_500, 4],
    ['12. role', 12_000, 2],
    ['0', 0, 1],
  ])('"%s"', (text, after, end) => {
    expect(since.read(text, none)).toMatchObject({ clock: start + after, isInstant: true, end });
  });
  test.each(['', 'now', '-3', '[12', '[12)', '12a', '2026-03-14', '10:00:00', '1.2.3', '1e5', 'x 12'])(
    '"%s" is no count',
    (text) => {
      expect(since.read(text, none)).toBe('no-date');
    },
  );
  test('has decimals only where it prints them', () => {
    expect(since.read('12', none)).toMatchObject({ hasDecimals: false });
    expect(since.read('12.0', none)).toMatchObject({ hasDecimals: true });
  });
});

describe('epoch counts', () => {
  // 1,773,478,800 s is 14 March 2026, 09:00 UTC: 20,526 days and 9 hours.
  const nine = Date.UTC(2026, 2, 14, 9);
  test.each([
    ['s', '1773478800', 0],
    ['s', '1773478800.123456', 123],
    ['ms', '1773478800123', 123],
    ['us', '1773478800123456', 123],
    ['us', '1773478800999999', 999],
    ['ns', '1773478800123456789', 123],
  ] as const)('in %s: %s', (unit, text, milliseconds) => {
    expect(nine).toBe((20_526 * 24 + 9) * 3_600_000);
    expect(epochCount(unit).read(text, none)).toMatchObject({ clock: nine + milliseconds, end: text.length });
  });
  test('of a finer unit than said is no date that exists', () => {
    expect(epochCount('s').read('1773478800123', none)).toBe('out-of-range');
    expect(epochCount('s').read('9'.repeat(30), none)).toBe('out-of-range');
    expect(epochCount('s').read('9'.repeat(31), none)).toBe('no-date');
  });
});
