import { describe, expect, test } from 'vitest';
import { stampsRule } from '../../../web/stamps-choice.ts';
import { allZones, findZones, offsetOf, zoneNamed, zoneProblem } from '../../../web/zone-search.ts';

const summer = Date.UTC(2026, 6, 1);
const winter = Date.UTC(2026, 0, 1);

describe('time zones', () => {
  test('are found by any word of their name, in any order and case', () => {
    const found = (words: string): readonly string[] =>
      findZones(allZones(), words, winter).map(({ name }) => name);
    expect(found('lisbon')).toEqual(['Europe/Lisbon']);
    expect(found('paulo america')).toEqual(['America/Sao_Paulo']);
    expect(found('São Paulo')).toEqual(['America/Sao_Paulo']);
    expect(found('Olympus')).toEqual([]);
    expect(found('utc')).toContain('UTC');
  });

  // Lisbon keeps western European time: UTC in winter, one hour ahead in summer (IANA time zone database, europe, 2024).
  test('are told with what their clock is ahead by at that time', () => {
    expect(findZones(['Europe/Lisbon'], '', summer)).toEqual([
      { name: 'Europe/Lisbon', offset: 'UTC+01:00' },
    ]);
    expect(offsetOf('Europe/Lisbon', winter)).toBe('UTC+00:00');
    expect(offsetOf('Asia/Kolkata', winter)).toBe('UTC+05:30');
  });

  test('that do not exist are said, in the words of the page', () => {
    expect(zoneNamed('europe/lisbon')).toBe('Europe/Lisbon');
    expect(zoneNamed('utc')).toBe('UTC');
    expect(zoneProblem('')).toBeNull();
    expect(zoneProblem('Mars/Olympus')).toBe(
      'There is no time zone "Mars/Olympus". Type a part of its name, such as Lisbon, and choose it from the list.',
    );
    expect(zoneProblem('+02:00')).not.toBeNull();
  });
});

describe('the fields on time zone and date format', () => {
  test('make one rule of what was said', () => {
    expect(stampsRule({ zone: 'Europe/Lisbon', order: 'day-first', year: ' 2026 ' })).toEqual({
      kind: 'rule',
      lesson: { kind: 'time', zone: 'Europe/Lisbon', order: 'day-first', year: 2026 },
      says: 'timestamps: Europe/Lisbon, day-first, 2026',
    });
  });

  test.each([
    [{ zone: 'Mars', order: '', year: '' }, 'zone'],
    [{ zone: '', order: '', year: '26' }, 'year'],
    [{ zone: '', order: '', year: '' }, 'zone'],
  ])('say what is wrong and in which: %j', (typed, field) => {
    expect(stampsRule(typed)).toMatchObject({ kind: 'wrong', field });
  });
});
