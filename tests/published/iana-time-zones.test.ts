/**
 * Source: IANA time zone database (release 2026f), transitions and local times computed with Python's zoneinfo (fold).
 * Exact.
 */
import { describe, expect, test } from 'vitest';
import { zoneOf } from '../../src/import/clock/zones.ts';

const local = (text: string): number => Date.parse(`${text}Z`);
const utc = (text: string): number => Date.parse(text);

describe('local times of the IANA data', () => {
  test.each([
    ['America/New_York', '2024-11-03T01:30:00', '2024-11-03T05:30:00Z', '2024-11-03T06:30:00Z'],
    ['Europe/Berlin', '2024-10-27T02:15:00', '2024-10-27T00:15:00Z', '2024-10-27T01:15:00Z'],
    ['Australia/Lord_Howe', '2024-04-07T01:45:00', '2024-04-06T14:45:00Z', '2024-04-06T15:15:00Z'],
  ])('%s %s is repeated: the order of the rows decides', (name, text, earlier, later) => {
    const zone = zoneOf(name, 'test');
    expect(zone.toUtc(local(text), Number.NEGATIVE_INFINITY)).toBe(utc(earlier));
    expect(zone.lastFold()).toBe('repeated');
    expect(zone.toUtc(local(text), utc(later) - 1)).toBe(utc(later));
  });
  test.each([
    ['America/New_York', '2024-03-10T02:30:00'],
    ['Australia/Lord_Howe', '2024-10-06T02:15:00'],
  ])('%s %s does not exist', (name, text) => {
    const zone = zoneOf(name, 'test');
    zone.toUtc(local(text), Number.NEGATIVE_INFINITY);
    expect(zone.lastFold()).toBe('missing');
  });
  test.each([
    ['Europe/Berlin', '2024-07-01T12:00:00', '2024-07-01T10:00:00Z'],
    ['Asia/Kolkata', '2024-07-01T12:00:00', '2024-07-01T06:30:00Z'],
    ['America/St_Johns', '2024-03-10T01:59:59', '2024-03-10T05:29:59Z'],
    ['America/St_Johns', '2024-03-10T03:00:00', '2024-03-10T05:30:00Z'],
    ['Pacific/Apia', '2011-12-29T23:59:59', '2011-12-30T09:59:59Z'],
    ['Pacific/Apia', '2011-12-31T00:00:00', '2011-12-30T10:00:00Z'],
  ])('%s %s', (name, text, expected) => {
    expect(zoneOf(name, 'test').toUtc(local(text), Number.NEGATIVE_INFINITY)).toBe(utc(expected));
  });
  test('elapsed time across a change: 01:55 to 03:05 is 600 s, 00:50 to 02:10 is 8400 s', () => {
    const zone = zoneOf('America/New_York', 'test');
    const at = (text: string): number => zone.toUtc(local(text), Number.NEGATIVE_INFINITY);
    expect(at('2024-03-10T03:05:00') - at('2024-03-10T01:55:00')).toBe(600_000);
    expect(at('2024-11-03T02:10:00') - at('2024-11-03T00:50:00')).toBe(8_400_000);
  });
  test('a name that is no zone is refused', () => {
    expect(() => zoneOf('Mars/Olympus', '--zone')).toThrow('"Mars/Olympus" is not a time zone.');
  });
});

describe('around both changes of Europe/Lisbon in 2026', () => {
  // What Intl prints of every minute of UTC is the other way round: the instants of a printed minute are those that print it.
  const print = new Intl.DateTimeFormat('en-GB', {
    timeZone: 'Europe/Lisbon',
    dateStyle: 'short',
    timeStyle: 'short',
  });
  const minute = 60_000;
  const around = (change: number): ReadonlyMap<string, readonly number[]> => {
    const printed = new Map<string, number[]>();
    for (let at = change - 4 * 60 * minute; at <= change + 4 * 60 * minute; at += minute)
      printed.set(print.format(at), [...(printed.get(print.format(at)) ?? []), at]);
    return printed;
  };
  const localOf = (text: string): number => {
    const [, day, month, year, hour, min] = /(\d+)\/(\d+)\/(\d+), (\d+):(\d+)/.exec(text)?.map(Number) ?? [];
    return Date.UTC(year ?? 0, (month ?? 0) - 1, day, hour, min);
  };
  test.each([
    ['spring, to 02:00 at 01:00', utc('2026-03-29T01:00:00Z')],
    ['autumn, to 01:00 at 02:00', utc('2026-10-25T01:00:00Z')],
  ])('%s: each minute is the instant that prints it, whatever was read before', (_, change) => {
    const minutes = [...around(change)].map(([text, instants]) => ({ local: localOf(text), instants }));
    const wrong: string[] = [];
    for (const before of minutes.filter((_, index) => index % 60 === 0)) {
      for (const { local, instants } of minutes) {
        const zone = zoneOf('Europe/Lisbon', 'test');
        zone.toUtc(before.local, Number.NEGATIVE_INFINITY);
        const read = zone.toUtc(local, Number.NEGATIVE_INFINITY);
        if (read !== instants[0])
          wrong.push(`${new Date(local).toISOString()}: ${new Date(read).toISOString()}`);
      }
    }
    expect(wrong).toEqual([]);
    expect(minutes.filter(({ instants }) => instants.length > 1)).toHaveLength(
      change > utc('2026-06-01T00:00:00Z') ? 60 : 0,
    );
  });
});
