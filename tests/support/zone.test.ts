/**
 * The runner starts the suite once in each zone; this shows that the zone took effect.
 * Source: IANA time zone database, file `australasia`, rules NZ (13 h ahead of UTC in January, 12 h in July).
 */
import { expect, test } from 'vitest';

const minutesAhead: Readonly<Record<string, readonly [number, number]>> = {
  UTC: [0, 0],
  'Pacific/Auckland': [780, 720],
};

test('the suite runs in the zone that the runner asked for', () => {
  const zone = process.env.TZ ?? 'UTC';
  const ahead = [0, 6].map((month) => 0 - new Date(2026, month, 15).getTimezoneOffset());
  expect(ahead).toEqual(minutesAhead[zone]);
});
