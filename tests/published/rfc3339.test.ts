/**
 * Source: RFC 3339, Date and Time on the Internet: Timestamps (2002), section 5.8 (examples), Appendix C (leap years).
 * Exact, but for the leap second, which is read as the second before it.
 */
import { describe, expect, test } from 'vitest';
import { readStamp } from '../../src/import/clock/timestamps.ts';

const options = { order: undefined, year: undefined, day: undefined } as const;
const clock = (text: string): unknown => {
  const stamp = readStamp(text, options);
  return typeof stamp === 'string' ? stamp : stamp.clock;
};

describe('RFC 3339, section 5.8', () => {
  test.each([
    ['1985-04-12T23:20:50.52Z', 482_196_050_520],
    ['1996-12-19T16:39:57-08:00', 851_042_397_000],
    ['1996-12-20T00:39:57Z', 851_042_397_000],
    ['1990-12-31T23:59:60Z', 662_687_999_000],
  ])('%s', (text, expected) => {
    expect(clock(text)).toBe(expected);
  });
});

describe('RFC 3339, section 5.6, which bounds the digits of a fraction nowhere', () => {
  // By hand: the milliseconds are its first three digits, since a stamp never stands for a later instant than it prints.
  test.each([
    ['.5', 500],
    ['.05', 50],
    ['.9999999999', 999],
    [`.${'3'.repeat(400)}`, 333],
  ])('%s', (fraction, expected) => {
    expect(clock(`1985-04-12T23:20:50${fraction}Z`)).toBe(482_196_050_000 + expected);
    expect(clock(`482196050${fraction}`)).toBe(482_196_050_000 + expected);
  });
});

describe('RFC 3339, Appendix C', () => {
  test.each([
    [1900, false],
    [2000, true],
    [2023, false],
    [2024, true],
    [2100, false],
  ])('29 February %i exists: %s', (year, exists) => {
    expect(clock(`${year}-02-29T00:00:00Z`)).toBe(exists ? Date.UTC(year, 1, 29) : 'out-of-range');
  });
  test('a day past the end of its month is refused, the last one is not', () => {
    expect(clock('2026-04-31T00:00:00Z')).toBe('out-of-range');
    expect(clock('2026-04-30T00:00:00Z')).toBe(Date.UTC(2026, 3, 30));
  });
});

describe('written by hand', () => {
  const dayFirst = { order: 'day-first', year: 2026, day: undefined } as const;
  test.each([
    ['14/03/2026 09:14:05', Date.UTC(2026, 2, 14, 9, 14, 5)],
    ['14.03.2026 09:14', Date.UTC(2026, 2, 14, 9, 14)],
    ['14-Mar-2026 09:14:05,250', Date.UTC(2026, 2, 14, 9, 14, 5, 250)],
    ['14/03/2026 12:00:00 AM', Date.UTC(2026, 2, 14)],
    ['14/03/2026 12:30:00 PM', Date.UTC(2026, 2, 14, 12, 30)],
    ['Mar 14 09:14:05', Date.UTC(2026, 2, 14, 9, 14, 5)],
    ['1773479645', Date.UTC(2026, 2, 14, 9, 14, 5)],
    ['1773479645250', Date.UTC(2026, 2, 14, 9, 14, 5, 250)],
  ])('%s', (text, expected) => {
    const stamp = readStamp(text, dayFirst);
    expect(typeof stamp === 'string' ? stamp : stamp.clock).toBe(expected);
  });
  test('digits that are no seconds and no milliseconds since 1970 are no time', () => {
    expect(clock('1773479645250123')).toBe('no-date');
    expect(clock('20260314091405')).toBe('no-date');
  });
  test('a date that can be read both ways is not guessed', () => {
    expect(clock('03/04/2026 09:14:05')).toBe('order');
  });
});
