import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
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
const steps = (file: ImportedFile): readonly number[] =>
  file.notices.filter((n) => n.id === 'clock-step').flatMap((n) => n.lines.map(({ line }) => line));
const changes = (file: ImportedFile): readonly string[] =>
  allChanges(file.changes).map(
    ({ earliest, time, value }) =>
      `${new Date(earliest).toISOString().slice(14, 19)} to ${new Date(time).toISOString().slice(14, 19)} ${value}`,
  );

describe('rows behind their neighbours', () => {
  test('are sorted where they are stray, however many', async () => {
    const file = await poll('00:00 yes', '00:20 no', '00:10 yes', '00:40 no', '00:30 no', '00:50 yes');
    expect(changes(file)).toEqual(['00:00 to 00:00 yes', '00:10 to 00:20 no', '00:40 to 00:50 yes']);
    expect(step(file)).toBeUndefined();
  });

  test('are none where more rows are stray than are behind for a step: then they are in no order', async () => {
    // Of one parameter three stamps stay behind and go on upwards; of four others the rows are in no order.
    const jumbled = ['03', '00', '04', '01', '02', '05'];
    const stepped = ['03', '00', '01', '02', '04', '05'];
    const rows = (parameter: string, minutes: readonly string[]): readonly string[] =>
      minutes.map(
        (minute) =>
          `2026-03-14T09:${minute}:00Z,RO1-A,${parameter},${parameter === 'supply' ? 'good' : 'up'}`,
      );
    const text = (others: readonly string[]): string =>
      [
        'time,unit,parameter,value',
        ...rows('supply', stepped),
        ...others.flatMap((other) => rows(other, jumbled)),
        '',
      ].join('\n');
    expect(step(await readText('poll.csv', text([])))).toBeDefined();
    expect(step(await readText('poll.csv', text(['link a', 'link b'])))).toBeUndefined();
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
      'From line 5 on the timestamps are 30 s behind those before and stay behind: the clock was set back there.',
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
    expect(step(await poll(...without))).toContain('From line 4 on the timestamps are 30 s behind');
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
    expect(step(file)).toContain('From line 5 on the timestamps are 1 min 30 s behind');
  });

  test('are two steps where they catch up and stay behind once more', async () => {
    const name = join('tests', 'fixtures', 'faults', 'two-steps.log');
    // A jump of 8 h ahead and back again, twice; the second time also more than has ever been read before.
    const file = await readText('two-steps.log', readFileSync(name));
    expect(steps(file)).toEqual([81, 301]);
    expect(file.notices.find((n) => n.id === 'clock-step')).toMatchObject({ count: 2 });
  });

  const stamps = (...spans: readonly (readonly [string, number])[]): readonly string[] =>
    spans.flatMap(([from, count]) =>
      Array.from({ length: count }, (_, index) => {
        const [minute = 0, second = 0] = from.split(':').map(Number);
        const at = minute * 60 + second + index * 10;
        return `${String(Math.floor(at / 60)).padStart(2, '0')}:${String(at % 60).padStart(2, '0')} yes`;
      }),
    );

  test.each([
    ['a step right after another', stamps(['30:00', 6], ['20:00', 4], ['10:00', 70]), [8, 12]],
    ['a step before the first has caught up', stamps(['30:00', 6], ['20:00', 30], ['22:05', 20]), [8, 38]],
    [
      'three, one after the other',
      stamps(['40:00', 6], ['30:00', 6], ['20:00', 6], ['10:00', 6]),
      [8, 14, 20],
    ],
    ['a step after one that caught up', stamps(['30:00', 6], ['29:00', 20], ['31:05', 20]), [8, 28]],
    ['a step right behind a stray row', stamps(['50:00', 6], ['20:00', 1], ['19:05', 90]), [9]],
    ['one step with a stray row in it', stamps(['30:00', 6], ['20:00', 8], ['20:30', 1], ['21:20', 20]), [8]],
  ])('are as many as there are: %s', async (_name, rows, lines) => {
    expect(steps(await poll(...rows))).toEqual(lines);
  });

  test('are as many for two units as for one, also if one of them shows only the second', async () => {
    const clocks = stamps(['30:00', 6], ['20:00', 6], ['10:00', 6]).map((row) => row.slice(0, 5));
    const text = (units: (index: number) => readonly string[]): string =>
      [
        'time,unit,parameter,value',
        ...clocks.flatMap((clock, index) =>
          units(index).map((unit) => `2026-03-14T09:${clock}Z,${unit},partner ready,yes`),
        ),
        '',
      ].join('\n');
    expect(
      steps(
        await readText(
          'a.csv',
          text(() => ['RO1', 'RO2']),
        ),
      ),
    ).toEqual([14, 26]);
    // RO2 is silent while the clock is 10 min behind.
    const some = await readText(
      'a.csv',
      text((index) => (index < 6 || index >= 12 ? ['RO1', 'RO2'] : ['RO1'])),
    );
    expect(steps(some)).toEqual([14, 20]);
  });

  test('are two where another unit shows only the second, on an earlier line', async () => {
    // RO2 is read before RO1, but only around the second step; both go over the same time.
    const first = stamps(['30:00', 6], ['10:00', 60], ['30:55', 3]);
    const second = stamps(['31:30', 3], ['11:05', 9]);
    const row = (clock: string, unit: string): string =>
      `2026-03-14T09:${clock.slice(0, 5)}Z,${unit},light,off`;
    const rows = [
      ...first.map((clock) => row(clock, 'RO1-A')),
      ...second.flatMap((clock) => [row(clock, 'RO2-A'), row(clock, 'RO1-A')]),
    ];
    // 69 rows of RO1, then three pairs of rows: the step is in line 2 + 69 + 6.
    expect(steps(await readText('a.csv', ['time,unit,parameter,value', ...rows, ''].join('\n')))).toEqual([
      8, 77,
    ]);
  });

  test('are no steps where they are in no order at all', async () => {
    // 41 places of a minute each, every 17th after the other: no two that follow each other stand together.
    const blocks = Array.from({ length: 41 }, (_, index) => {
      const place = (index * 17) % 41;
      return [`${String(place).padStart(2, '0')}:0${index % 10}`, 5 + (index % 4)] as const;
    });
    const shuffled = stamps(...blocks);
    expect(steps(await poll(...shuffled))).toEqual([]);
    expect(changes(await poll(...shuffled))).toHaveLength(1);
  });
});
