import { expect, test } from 'vitest';
import { InputError, readPhrasebook, tryStamps } from '../../../../src/pipeline.ts';
import type { FileDraft } from '../../../../src/vocabulary.ts';

const file = (name: string, ...stamps: readonly string[]): FileDraft => ({
  file: name,
  keys: [],
  time: [],
  isZoneOpen: true,
  isGuess: false,
  samples: [],
  stamps,
});
const nothing = { zone: null, order: null, year: null };
const plain = readPhrasebook('p.yaml', null);

test('the first stamps are read as was said, or say what they leave open', () => {
  const files = [file('a.csv', '03/04/2026 09:00:00'), file('b.log', 'Mar 14 07:00:00'), file('c.log')];
  const said = tryStamps(files, plain, nothing).map(({ stamps }) => stamps[0]);
  expect(said).toEqual([
    {
      text: '03/04/2026 09:00:00',
      at: null,
      problem: '"03/04/2026 09:00:00" may be day-first or month-first.',
    },
    { text: 'Mar 14 07:00:00', at: null, problem: '"Mar 14 07:00:00" has no year.' },
  ]);
  // Lisbon is an hour ahead of UTC on 3 April 2026, and not on 14 March (IANA time zone database, europe, 2024).
  const read = tryStamps(files, plain, { zone: 'Europe/Lisbon', order: 'day-first', year: 2026 });
  expect(read.map(({ stamps }) => stamps[0]?.at)).toEqual([
    Date.UTC(2026, 3, 3, 8),
    Date.UTC(2026, 2, 14, 7),
  ]);
});

test('what the phrasebook says of one file comes first, as in reading', () => {
  const own = readPhrasebook('p.yaml', 'files: [{ match: a.csv, time: { order: month-first } }]');
  const [read] = tryStamps([file('a.csv', '03/04/2026 09:00:00')], own, { ...nothing, order: 'day-first' });
  expect(read?.stamps[0]?.at).toBe(Date.UTC(2026, 2, 4, 9));
});

test('a zone that does not exist is refused', () => {
  expect(() => tryStamps([file('a.csv', '03/04/2026')], plain, { ...nothing, zone: 'Mars' })).toThrow(
    InputError,
  );
});
