import { describe, expect, test } from 'vitest';
import { readText } from '../../../support/read-text.ts';

const clocks = ['09:00:00', '09:10:00', '09:20:00', '09:30:00', '09:40:00', '09:50:00'];
const table = (header: string, row: (clock: string, index: number) => string): string =>
  `${[header, ...clocks.map(row)].join('\n')}\n`;
const become = async (text: string): Promise<readonly unknown[]> => {
  const { input, columns } = await readText('x.csv', text, { order: 'day-first' });
  return [input.layout, columns.map(({ name, meaning }) => `${name}: ${meaning}`).join(', ')];
};

describe('a table whose header nothing knows is told by what its columns hold', () => {
  test('a journal: the column that says most is the message', async () => {
    const text = table('No.;Logged at;Where;Prio;What', (clock, index) =>
      [index, `14/03/2026 ${clock}`, 'RO1-A', 'low', `light ${index % 2 ? 'steady' : 'flashing'}`].join(';'),
    );
    expect(await become(text)).toEqual([
      'journal',
      'No.: null, Logged at: time, Where: unit, Prio: null, What: message',
    ]);
    const { reasons, input } = await readText('x.csv', text, { order: 'day-first' });
    expect(input.rows).toMatchObject({ read: 6, used: 6 });
    expect(reasons[0]).toBe(
      'Read as journal: its header names no known column; by their contents these were taken: "Logged at" as the time, "Where" as the unit, "What" as the message. Correct it under files in a phrasebook if that is wrong.',
    );
  });

  test('readings: names that repeat, and their values', async () => {
    const text = table('Moment,Box,Quality,Is', (clock, index) =>
      [`2026-03-14 ${clock}`, 'RO1-A', index % 2 ? 'light' : 'model', `v${index}`].join(','),
    );
    expect(await become(text)).toEqual([
      'readings',
      'Moment: time, Box: unit, Quality: parameter, Is: value',
    ]);
  });

  test('units that no pattern knows are the first column that repeats itself, and both they and the message are listed', async () => {
    const text = table('Moment,Spot,Words', (clock, index) => `2026-03-14 ${clock},bay ? left,door ${index}`);
    expect(await become(text)).toEqual(['journal', 'Moment: time, Spot: unit, Words: message']);
    const { input } = await readText('x.csv', text);
    expect(input.rows).toMatchObject({ read: 6, unmatched: 6 });
    expect(input.unmatched.slice(0, 2)).toEqual([
      { wording: 'unit bay ? left', count: 6, firstLine: 2 },
      { wording: 'door 0', count: 1, firstLine: 2 },
    ]);
  });

  test('a preamble stands before it', async () => {
    const text = table('Moment,Box,Words', (clock) => `2026-03-14 ${clock},RO1-A,light steady`);
    const file = await readText('x.csv', `Station 3, exported today\n\n${text}`);
    expect([file.input.layout, file.input.rows.read]).toEqual(['journal', 6]);
  });

  test.each([
    ['no column holds times', table('A,B,C', (_, index) => `x,RO1-A,word ${index}`)],
    ['two columns say too little', table('A,B', (clock) => `2026-03-14 ${clock},light steady`)],
    ['too few rows', 'A,B,C\n2026-03-14 09:00:00,RO1-A,light steady\n'],
  ])('not where %s', async (_name, text) => {
    await expect(become(text)).rejects.toThrow('the layout is not known');
  });

  test('not where the first line holds a time: then it is no header', async () => {
    const rows = clocks.map((clock) => `2026-03-14 ${clock}, RO1-A, light steady`);
    expect((await become(`${rows.join('\n')}\n`))[0]).toBe('lines');
  });
});
