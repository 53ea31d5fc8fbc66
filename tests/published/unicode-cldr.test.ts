/**
 * Source: Unicode CLDR, gregorian calendar: names of months and days, date and time formats, as Node's Intl prints them (its full
 * ICU holds the data; `process.versions.cldr` says which release). Every date that it prints is read as that date. Exact.
 */
import { describe, expect, test } from 'vitest';
import { readStamp } from '../../src/import/clock/timestamps.ts';

const locales = ['en-GB', 'en-AU', 'de', 'de-AT', 'fr', 'fr-CA', 'es', 'es-MX', 'pt', 'pt-PT', 'it'];
const styles = ['full', 'long', 'medium', 'short'] as const;
const days = Array.from({ length: 48 }, (_, index) => Date.UTC(2026, 0, 2 + index * 7, 21, 4, 5));

const options = { order: 'day-first', year: undefined, day: undefined } as const;

function clockOf(text: string): number | string {
  const stamp = readStamp(text, options);
  return typeof stamp === 'string' ? stamp : stamp.clock;
}

/** All days that are read as something else, with what they were printed as. */
function misread(print: (day: number) => string, expected: (day: number) => number): readonly string[] {
  return days.flatMap((day) => {
    const text = print(day);
    return clockOf(text) === expected(day) ? [] : [`${text}: ${clockOf(text)}`];
  });
}

const midnight = (day: number): number => day - (day % 86_400_000);

describe.each(locales)('dates as CLDR prints them for %s', (locale) => {
  test.each(styles)('%s', (dateStyle) => {
    const dates = new Intl.DateTimeFormat(locale, { dateStyle, timeZone: 'UTC' });
    const both = new Intl.DateTimeFormat(locale, { dateStyle, timeStyle: 'medium', timeZone: 'UTC' });
    const minutes = new Intl.DateTimeFormat(locale, { dateStyle, timeStyle: 'short', timeZone: 'UTC' });
    expect(misread((day) => dates.format(day), midnight)).toEqual([]);
    expect(
      misread(
        (day) => both.format(day),
        (day) => day,
      ),
    ).toEqual([]);
    expect(
      misread(
        (day) => minutes.format(day),
        (day) => day - 5000,
      ),
    ).toEqual([]);
  });
  test('with the 12-hour clock', () => {
    const twelve = { dateStyle: 'long', timeStyle: 'medium', hour12: true, timeZone: 'UTC' } as const;
    const format = new Intl.DateTimeFormat(locale, twelve);
    expect(
      misread(
        (day) => format.format(day),
        (day) => day,
      ),
    ).toEqual([]);
  });
  test.each(['long', 'short'] as const)('by the %s name of the month, with hyphens, in capitals', (month) => {
    const name = (day: number): string =>
      new Intl.DateTimeFormat(locale, { month, day: 'numeric', timeZone: 'UTC' })
        .formatToParts(day)
        .find(({ type }) => type === 'month')?.value ?? '';
    const number = (day: number): number => new Date(day).getUTCDate();
    const print = (day: number): string => `${number(day)}-${name(day).toUpperCase()}-2026 21:04:05`;
    expect(misread(print, (day) => day)).toEqual([]);
  });
  test('by the names of days before a date in figures', () => {
    for (const weekday of ['long', 'short'] as const) {
      const name = new Intl.DateTimeFormat(locale, { weekday, timeZone: 'UTC' });
      const iso = (day: number): string => new Date(day).toISOString().slice(0, 19);
      expect(
        misread(
          (day) => `${name.format(day)} ${iso(day)}`,
          (day) => day,
        ),
      ).toEqual([]);
    }
  });
});

test('no word is the name of two months', () => {
  const named = new Map<string, Set<number>>();
  for (const locale of locales)
    for (const style of ['long', 'short'] as const) {
      const format = new Intl.DateTimeFormat(locale, { month: style, timeZone: 'UTC' });
      for (let month = 0; month < 12; month += 1) {
        const word = format.format(Date.UTC(2026, month, 1)).toLowerCase();
        if (!/\d/.test(word)) named.set(word, (named.get(word) ?? new Set()).add(month));
      }
    }
  expect([...named].filter(([, months]) => months.size > 1)).toEqual([]);
  expect(named.size).toBeGreaterThan(60);
});
