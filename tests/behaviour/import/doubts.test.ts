import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../src/changes.ts';
import type { ImportedFile } from '../../../src/vocabulary.ts';
import { readText, readTexts } from '../../support/read-text.ts';

/** A journal of so many rows, one a second. */
const journal = (count: number, unit: (row: number) => string, message: (row: number) => string): string =>
  `time,unit,message\n${Array.from({ length: count }, (_, row) => {
    const stamp = new Date(Date.UTC(2026, 2, 14, 10) + row * 1000).toISOString();
    return `${stamp},${unit(row)},${message(row)}\n`;
  }).join('')}`;
const light = (row: number): string => `light ${row % 2 === 0 ? 'steady' : 'off'}`;
const pairs = ({ changes }: ImportedFile): readonly string[] => [
  ...new Set(allChanges(changes).map((c) => c.subject.pair)),
];
const loud = ({ notices: [first] }: ImportedFile): string => `${first?.what} ${first?.fix}`;

describe('no pair is invented', () => {
  test('of one word in all rows', async () => {
    const file = await readText(
      'x.csv',
      journal(30, () => 'SYSTEM', light),
    );
    expect([pairs(file), file.input.rows.unmatched]).toEqual([[], 30]);
    expect(loud(file)).toBe(
      '"SYSTEM" in column "unit" may be an ordinary word: no half of such a pair is named, and it has no digit as RO1 has: unit not known, 30 rows, the first in line 2. If it is a unit, add to the phrasebook units: [{ pattern: "^SYSTEM$", pair: RO1, half: A }]; if not, name the place of the unit: files: [{ match: "x.csv", columns: { unit: NAME } }].',
    );
  });

  test('of a word for any system, whatever is said of it; of one in capitals that is said of pairs alone it is a name', async () => {
    const said = (row: number): string => (row % 2 === 0 ? 'partner ready' : 'partner not ready');
    const of = async (name: string, message: (row: number) => string): Promise<readonly string[]> =>
      pairs(
        await readText(
          'x.csv',
          journal(30, () => name, message),
        ),
      );
    expect(await of('SYSTEM', said)).toEqual([]);
    expect(await of('OUTFALL', said)).toEqual(['OUTFALL']);
    expect(await of('OUTFALL', light)).toEqual([]);
    expect(await of('OUTFALL', (row) => (row === 7 ? 'door 3 opened' : said(row)))).toEqual([]);
  });

  test('of numbers of errors, which every row has another of', async () => {
    const file = await readText(
      'x.csv',
      journal(30, (row) => `E${1000 + row}`, light),
    );
    expect([pairs(file), file.input.rows.unmatched]).toEqual([[], 30]);
    expect(loud(file)).toContain('differs in every row, as row, process or error numbers do');
  });

  test('of thread names, of numbers of processes, of words of severity', async () => {
    for (const unit of [
      (row: number) => `worker-${row % 2}`,
      (row: number) => `${812 + row}`,
      () => 'WARN',
    ]) {
      const file = await readText('x.csv', journal(30, unit, light));
      expect([pairs(file), file.input.rows.unmatched]).toEqual([[], 30]);
      expect(loud(file)).toContain('unit not known, 30 rows, the first in line 2.');
      expect(loud(file)).toContain('files: [{ match: "x.csv", columns: { unit: NAME } }]');
    }
  });

  test('of a name with more than two halves', async () => {
    const file = await readText(
      'x.csv',
      journal(30, (row) => `RO-${row % 4}`, light),
    );
    expect(pairs(file)).toEqual([]);
    expect(loud(file)).toContain('would be a pair with more than two halves');
  });

  test('and one is not lost: a figure, a half in this file or in another, a column of pairs, the phrasebook', async () => {
    const words = journal(
      30,
      () => 'INTAKE',
      () => 'partner ready',
    );
    expect(
      pairs(
        await readText(
          'x.csv',
          journal(
            30,
            () => 'RO1',
            () => 'partner ready',
          ),
        ),
      ),
    ).toEqual(['RO1']);
    const halves = journal(
      30,
      (row) => (row === 29 ? 'INTAKE-A' : 'INTAKE'),
      () => 'partner ready',
    );
    expect(pairs(await readText('x.csv', halves))).toEqual(['INTAKE']);
    expect(pairs(await readText('x.csv', words.replace('time,unit', 'time,pair')))).toEqual(['INTAKE']);
    const phrasebook = 'units: [{ pattern: "^(?<pair>INTAKE)$" }]\n';
    expect(pairs(await readText('x.csv', words, { phrasebook }))).toEqual(['INTAKE']);
    const { files } = await readTexts({ 'a.csv': words, 'b.csv': journal(3, () => 'INTAKE-B', light) });
    expect(files.map((file) => [file.input.file, file.input.rows.used > 0])).toEqual([
      ['a.csv', true],
      ['b.csv', true],
    ]);
  });

  test('one dump of all pairs at one time has another unit in every row', async () => {
    const rows = Array.from({ length: 25 }, (_, i) => `2026-03-14T10:00:00Z,RO${i},partner ready\n`).join('');
    const file = await readText('x.csv', `time,unit,message\n${rows}`);
    expect(pairs(file)).toHaveLength(25);
  });
});

describe('a reading that cannot be right', () => {
  test('of a hundred rows none was of use: said with an example and the rule', async () => {
    const door = (row: number): string => `door ${row % 5} opened`;
    const file = await readText(
      'x.csv',
      journal(100, () => 'RO1-A', door),
    );
    expect(loud(file)).toBe(
      'None of its 100 rows could be used: "door 0 opened" in its rows was not recognised, 20 rows, the first in line 2; and 4 more wordings. Add their meaning to the phrasebook: messages: [{ when: "^door 0 opened$", signal: SIGNAL, value: VALUE }].',
    );
    // The row itself, as it stands in the file, below the header.
    expect(file.notices.find(({ what }) => what.startsWith('None of its'))?.lines).toEqual([
      { file: 'x.csv', line: 2, text: journal(100, () => 'RO1-A', door).split('\n')[1] },
    ]);
    expect(
      loud(
        await readText(
          'x.csv',
          journal(99, () => 'RO1-A', door),
        ),
      ),
    ).not.toContain('None of its');
  });

  test('all rows in one instant', async () => {
    const text = journal(30, () => 'RO1-A', light).replaceAll(/10:00:\d\d/g, '10:00:00');
    await expect(readText('x.csv', text)).rejects.toThrow(
      'all its 30 rows have one time, 2026-03-14T10:00:00.000Z, and report the same thing again and again: column "time", as in line 31',
    );
  });

  test('dates without a clock, and no column of clocks', async () => {
    const text = 'Date,unit,message\n14/03/2026,RO1-A,light steady\n15/03/2026,RO1-A,light off\n';
    await expect(readText('x.csv', text)).rejects.toThrow(
      'Name the column of the clock in the phrasebook: files: [{ match: "x.csv", columns: { date: "Date", clock: NAME } }].',
    );
  });

  test('a year that cannot be, of a stamp or of a count', async () => {
    const text = journal(3, () => 'RO1-A', light);
    await expect(readText('x.csv', text.replaceAll('2026-', '2206-'))).rejects.toThrow('which cannot be');
    const count = 'time,unit,message\n100000000,RO1-A,light off\n100000010,RO1-A,light steady\n';
    await expect(readText('x.csv', count)).rejects.toThrow('time: { since: "2026-03-14T08:00:00Z" }');
    // A clock that lost its battery prints 1970, and its spans are right.
    expect((await readText('x.csv', text.replaceAll('2026-', '1970-'))).input.rows.used).toBe(3);
  });

  test('two columns of clocks beside one of dates are not guessed at', async () => {
    const row = (second: number): string =>
      `14/03/2026,10:00:0${second},10:00:0${second + 1},RO1-A,light off\n`;
    const text = `Day,Raised,Gone,Where,What\n${[1, 2, 3, 4].map(row).join('')}`;
    await expect(readText('x.csv', text)).rejects.toThrow(
      'both "Raised" and "Gone" have clocks. Choose one in the phrasebook: files: [{ match: "x.csv"',
    );
  });
});

describe('a year that no stamp prints', () => {
  test('goes on over New Year, and is the nearest to the other files', async () => {
    const text =
      'Dec 31 23:59:58 RO1-A redund[1]: role active\nJan  1 00:00:02 RO1-B redund[1]: light steady\n';
    await expect(readText('x.log', text)).rejects.toThrow('Set time.year in the phrasebook');
    // Another file begins on 1 January 2027: the last of December before it is of 2026.
    const found = await readText('x.log', text, { neighbour: Date.UTC(2027, 0, 1, 9) });
    expect([found.input.from, found.input.to]).toEqual([
      Date.UTC(2026, 11, 31, 23, 59, 58),
      Date.UTC(2027, 0, 1, 0, 0, 2),
    ]);
    expect(found.reasons).toContain(
      'Year 2026 for its first timestamp, which has none: the nearest to the other files.',
    );
  });
});
