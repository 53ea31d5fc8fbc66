import { describe, expect, test } from 'vitest';
import type { ImportedFile } from '../../../../src/vocabulary.ts';
import { readText } from '../../../support/read-text.ts';

/** A poll of 14 March 2026, a row per `mm:ss value`; its columns are those of plain English. */
async function poll(...rows: readonly string[]): Promise<ImportedFile> {
  const body = rows.map((row) => {
    const [clock = '', value = ''] = row.split(' ');
    return `2026-03-14T09:${clock}Z,RO1,partner ready,${value}`;
  });
  return readText('poll.csv', `${['time,unit,parameter,value', ...body].join('\n')}\n`);
}

const step = (file: ImportedFile): string | undefined =>
  file.notices.find((n) => n.id === 'clock-step')?.what;
const changes = (file: ImportedFile): readonly string[] =>
  file.changes.map(
    ({ earliest, time, value }) =>
      `${new Date(earliest).toISOString().slice(14, 19)} to ${new Date(time).toISOString().slice(14, 19)} ${value}`,
  );

describe('rows behind their neighbours', () => {
  test('are sorted where they are stray, however many', async () => {
    const file = await poll('00:00 yes', '00:20 no', '00:10 yes', '00:40 no', '00:30 no', '00:50 yes');
    expect(changes(file)).toEqual(['00:00 to 00:00 yes', '00:10 to 00:20 no', '00:40 to 00:50 yes']);
    expect(step(file)).toBeUndefined();
  });

  test('are a step of the clock where three stamps or more stay behind and go on upwards', async () => {
    const file = await poll(
      '00:00 yes',
      '01:00 no',
      '01:10 no',
      '00:40 no',
      '00:50 no',
      '01:00 no',
      '01:10 yes',
    );
    expect(step(file)).toBe(
      'From line 5 on the stamps are 30 s behind what was read before and stay so: the clock was set back there.',
    );
    // Nothing is sorted across the step: "no" was read from 01:00 of the old clock to 01:00 of the new one, never "yes".
    expect(changes(file)).toEqual(['00:00 to 00:00 yes', '00:00 to 01:00 no', '01:00 to 01:10 yes']);
  });

  test('are no step where as many came out of order otherwise', async () => {
    const rows = ['00:00', '00:20', '00:10', '00:40', '00:30', '01:00', '00:50', '01:20', '01:10', '02:00'];
    const back = ['01:30', '01:40', '01:50', '02:10'];
    const file = await poll(...[...rows, ...back].map((clock) => `${clock} no`));
    expect(step(file)).toBeUndefined();
    const without = ['00:00', '02:00', ...back].map((clock) => `${clock} no`);
    expect(step(await poll(...without))).toContain('From line 4 on the stamps are 30 s behind');
  });

  test('are a second export where its first row was read before: sorted, nothing counted twice', async () => {
    const once = ['00:00 yes', '00:10 no', '00:20 yes', '00:30 yes'];
    const file = await poll(...once, ...once.slice(1), '00:40 no');
    expect(changes(file)).toEqual(changes(await poll(...once, '00:40 no')));
    expect(step(file)).toBeUndefined();
    expect(file.input.rows).toMatchObject({ read: 8, used: 4, unchanged: 4 });
  });

  test('of one unit after another are none', async () => {
    const rows = ['RO1', 'RO2'].flatMap((unit) =>
      ['00', '10', '20', '30'].map((second) => `2026-03-14T09:00:${second}Z,${unit},partner ready,yes`),
    );
    const file = await readText('poll.csv', `${['time,unit,parameter,value', ...rows].join('\n')}\n`);
    expect(file.notices).toEqual([]);
  });

  test('of a journal are a step too', async () => {
    const rows = ['01:00', '02:00', '03:00', '01:30', '01:40', '01:50'].map(
      (clock, index) => `2026-03-14T09:${clock}Z,RO1,light ${index % 2 ? 'steady' : 'flashing'}`,
    );
    const file = await readText('journal.csv', `${['time,unit,message', ...rows].join('\n')}\n`);
    expect(step(file)).toContain('From line 5 on the stamps are 1 min 30 s behind');
  });
});
