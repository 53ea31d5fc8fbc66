/** Stamps as exports of six languages print them: each with what it says by hand. */
import { describe, expect, test } from 'vitest';
import { readStamp } from '../../../../src/import/clock/timestamps.ts';

const options = { order: 'day-first', year: 2026, day: undefined } as const;

/** The instant or clock as ISO text, and what of the text is left; or why it is none. */
function read(text: string): string {
  const stamp = readStamp(text, options);
  if (typeof stamp === 'string') return stamp;
  const clock = new Date(stamp.clock).toISOString().replace(/\.000Z$/, 'Z');
  return `${stamp.isInstant ? clock : clock.slice(0, -1)}${stamp.zone === undefined ? '' : ` ${stamp.zone}`}|${text.slice(stamp.end)}`;
}

describe('dates with full stops and any clock', () => {
  test.each([
    ['14.03.2026 09:14', '2026-03-14T09:14:00|'],
    ['14.03.26 9:14:05,123', '2026-03-14T09:14:05.123|'],
    ['14.3.2026 9h14', '2026-03-14T09:14:00|'],
    ['14. 3. 2026 9 h 14 min 05 s x', '2026-03-14T09:14:05| x'],
    ['14.03.2026 9h14m05s', '2026-03-14T09:14:05|'],
    ['14.03.2026 09.14.05', '2026-03-14T09:14:05|'],
    ['14.03.2026 09.14.05,123 RO1', '2026-03-14T09:14:05.123| RO1'],
    ['14.03.2026 09.14', '2026-03-14T09:14:00|'],
    ['14.03.2026, 09:14 Uhr RO1', '2026-03-14T09:14:00| RO1'],
    ['14.03.2026 um 09:14:05', '2026-03-14T09:14:05|'],
    ['14.03.2026 - 09:14:05', '2026-03-14T09:14:05|'],
    ['14/Mar/2026:09:14:05 +0100', '2026-03-14T08:14:05Z|'],
    ['09:14:05 14.03.2026 RO1', '2026-03-14T09:14:05| RO1'],
    ['20260314T091405Z', '2026-03-14T09:14:05Z|'],
    ['20260314 09:14:05', '2026-03-14T09:14:05|'],
    ['14.03.2026 12.50bar', 'no-date'],
    ['14.03.2026 H', '2026-03-14T00:00:00| H'],
    ['2026-03-14 09:14:05 H lost', '2026-03-14T09:14:05| H lost'],
    ['09:14:05 6.4.10 loaded', 'day'],
  ])('%s', (text, expected) => expect(read(text)).toBe(expected));
});

describe('the 12-hour clock in any spelling', () => {
  test.each([
    ['14/03/2026 9:14:05 p.m.', '2026-03-14T21:14:05|'],
    ['14/03/2026 9:14:05 P.M. x', '2026-03-14T21:14:05| x'],
    ['14/3/2026, 9:14:05 p.\u00a0m.', '2026-03-14T21:14:05|'],
    ['14/03/2026 9:14:05\u202fPM', '2026-03-14T21:14:05|'],
    ['14/03/2026 12:00 a.m.', '2026-03-14T00:00:00|'],
    ['14/03/2026 9.14 pm', '2026-03-14T21:14:00|'],
    ['14/03/2026 13:00 p.m.', 'out-of-range'],
    ['14/03/2026 09:20 ambient', '2026-03-14T09:20:00| ambient'],
    ['14/03/2026 13:20 am Schrank', '2026-03-14T13:20:00| am Schrank'],
  ])('%s', (text, expected) => expect(read(text)).toBe(expected));
});

describe('months by name', () => {
  test.each([
    ['14 mars 2026', '2026-03-14T00:00:00|'],
    ['14-déc-2026 09:14', '2026-12-14T09:14:00|'],
    ['14-DE\u0301C.-2026 09:14', '2026-12-14T09:14:00|'],
    ['3 de março de 2026 09:14', '2026-03-03T09:14:00|'],
    ['14. März 2026 09:14', '2026-03-14T09:14:00|'],
    ['14.Mrz.2026 09:14', '2026-03-14T09:14:00|'],
    ['1er août 2026 à 9h14', '2026-08-01T09:14:00|'],
    ['1º de set. de 2026 às 09:14', '2026-09-01T09:14:00|'],
    ['14 ott 2026 alle ore 09:14', '2026-10-14T09:14:00|'],
    ['14 de enero de 2026 a las 9:14', '2026-01-14T09:14:00|'],
    ['March 14th, 2026 at 9:14 PM', '2026-03-14T21:14:00|'],
    ['14MAR2026 09:14', '2026-03-14T09:14:00|'],
    ['2026-Mar-14 09:14', '2026-03-14T09:14:00|'],
    ['14 jui 2026', 'no-date'],
    ['Marble 14 2026 09:14', 'no-date'],
    ['May 5 of 7 pumps', 'no-date'],
    ['set 5 of 7 pumps', 'no-date'],
    ['Mar 14 09:14:05 RO1', '2026-03-14T09:14:05| RO1'],
    ['14 mar 09:14:05 RO1', '2026-03-14T09:14:05| RO1'],
  ])('%s', (text, expected) => expect(read(text)).toBe(expected));
});

describe('a day of the week before the date is skipped', () => {
  test.each([
    ['Sat Mar 14 09:14:05 2026 RO1', '2026-03-14T09:14:05| RO1'],
    ['Sat Mar 14 09:14:05 WEST 2026', '2026-03-14T08:14:05Z|'],
    ['Sat, 14 Mar 2026 09:14:05 +0000 (WET)', '2026-03-14T09:14:05Z|'],
    ['mar. 14 mars 2026', '2026-03-14T00:00:00|'],
    ['mar 17/03/2026 09:14', '2026-03-17T09:14:00|'],
    ['mar 14 2026 09:14', '2026-03-14T09:14:00|'],
    ['mar 14 09:14:05', '2026-03-14T09:14:05|'],
    ['segunda-feira, 16 de março de 2026 09:14', '2026-03-16T09:14:00|'],
    ['16/03/2026 (Mon) 09:14', '2026-03-16T09:14:00|'],
    ['16/03/2026 lun. 09:14', '2026-03-16T09:14:00|'],
    ['Sat RO1', 'no-date'],
  ])('%s', (text, expected) => expect(read(text)).toBe(expected));
});

describe('a zone behind the clock', () => {
  test.each([
    ['2026-07-14 09:14:05 WEST', '2026-07-14T08:14:05Z|'],
    ['2026-07-14 09:14:05 Western European Summer Time', '2026-07-14T08:14:05Z|'],
    ['2026-07-14 09:14:05 Europe/Lisbon RO1', '2026-07-14T09:14:05 Europe/Lisbon| RO1'],
    ['2026-07-14T09:14:05[Europe/Lisbon]', '2026-07-14T09:14:05 Europe/Lisbon|'],
    ['2026-07-14T09:14:05+01:00[Europe/Lisbon]', '2026-07-14T08:14:05Z|'],
    ['2026-07-14 09:14:05+01', '2026-07-14T08:14:05Z|'],
    ['2026-07-14 09:14:05 UTC+1', '2026-07-14T08:14:05Z|'],
    ['2026-07-14 09:14:05 GMT-03:30', '2026-07-14T12:44:05Z|'],
    ['2026-07-14 09:14:05 UTC', '2026-07-14T09:14:05Z|'],
    ['2026-07-14 09:14:05 CST', 'zone'],
    ['2026-07-14 09:14:05 IST RO1', 'zone'],
    ['2026-07-14 09:14:05 WEST partner lost', '2026-07-14T09:14:05| WEST partner lost'],
    ['2026-07-14 09:14:05 CST-A lost', '2026-07-14T09:14:05| CST-A lost'],
    ['2026-07-14 09:14:05 Pacific/A lost', '2026-07-14T09:14:05| Pacific/A lost'],
    ['2026-07-14 09:14:05 [RO1-A] lost', '2026-07-14T09:14:05| [RO1-A] lost'],
    ['2026-07-14 09:14:05 [WEST] lost', '2026-07-14T09:14:05| [WEST] lost'],
    ['2026-07-14 09:14:05 RO1-A lost', '2026-07-14T09:14:05| RO1-A lost'],
    ['2026-07-14 09:14:05 -12 V', '2026-07-14T09:14:05| -12 V'],
  ])('%s', (text, expected) => expect(read(text)).toBe(expected));
});
