import { describe, expect, test } from 'vitest';
import { readText } from '../../../support/read-text.ts';

const wrong = async (name: string, ...rows: readonly string[]): Promise<readonly string[]> =>
  (await readText(name, `${rows.join('\n')}\n`)).notices.flatMap((n) =>
    n.id === 'wrong-half' ? [n.what] : [],
  );
const log = (unit: string): string => `2026-03-14T09:00:00.000Z [${unit}] light steady`;

describe('a log of another half than it was given for', () => {
  test.each(['ro1-a-events.log', 'exports/RO1 slot A.log', 'RO1_A.log'])(
    '%s of units of half B',
    async (name) => {
      expect(await wrong(name, log('RO1-B'), log('RO1'))).toEqual([
        'Its name says half A of RO1, but its unit "RO1-B" is half B.',
      ]);
    },
  );

  test.each(['ro1-b-events.log', 'ro1-events.log', 'ro1-a1.log', 'xro1-a.log', 'ro2-a.log'])(
    'is none by the name %s',
    async (name) => expect(await wrong(name, log('RO1-B'))).toEqual([]),
  );

  test('is none where both halves speak', async () => {
    expect(await wrong('ro1-a.log', log('RO1-A'), log('RO1-B'))).toEqual([]);
  });

  test.each(['ro1-5.log', 'RO1 2.log'])(
    'is none by the name %s: a number beside letters counts parts or days',
    async (name) => expect(await wrong(name, log('RO1-B'))).toEqual([]),
  );

  test('is none where both halves speak and the name says neither', async () => {
    expect(await wrong('ro1-x.log', log('RO1-A'), log('RO1-B'))).toEqual([]);
  });

  test('is told where a unit names one half and the column beside it another', async () => {
    const rows = (unit: string): readonly string[] => [
      'time,unit,half,light',
      `2026-03-14T09:00:00Z,${unit},B,steady`,
      `2026-03-14T09:00:10Z,${unit},B,steady`,
    ];
    expect(await wrong('poll.csv', ...rows('RO1-A'))).toEqual([
      'The unit of "RO1-A B" says half A, but the column beside it half B.',
    ]);
    expect(await wrong('poll.csv', ...rows('RO1-B'))).toEqual([]);
    expect(await wrong('poll.csv', ...rows('RO1'))).toEqual([]);
  });
});
