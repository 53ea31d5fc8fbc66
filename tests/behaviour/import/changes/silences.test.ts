import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
import type { ImportedFile } from '../../../../src/vocabulary.ts';
import { readText } from '../../../support/read-text.ts';

const begin = Date.UTC(2026, 2, 14, 9);
const stamp = (seconds: number): string => `${new Date(begin + seconds * 1000).toISOString().slice(0, 19)}Z`;

/** Snapshots of RO1-A: at so many seconds light, supply and serial, separated by spaces; `.` is an empty cell. */
const snapshots = (rows: readonly (readonly [number, string])[]): string =>
  [
    'time,unit,light,supply,serial',
    ...rows.map(
      ([seconds, cells]) => `${stamp(seconds)},RO1-A,${cells.replaceAll('.', '').replaceAll(' ', ',')}`,
    ),
    '',
  ].join('\n');

const every10 = (from: number, to: number, cells: string): readonly (readonly [number, string])[] =>
  Array.from({ length: (to - from) / 10 + 1 }, (_, index) => [from + index * 10, cells] as const);

async function read(text: string): Promise<ImportedFile> {
  const file = await readText('poll.csv', text);
  expect(await readText('poll.csv', text, { isGeneralOnly: true })).toEqual(file);
  return file;
}

/** What is read again, as `signal value earliest to time, line`. */
function resumed({ changes }: ImportedFile): readonly string[] {
  return allChanges(changes)
    .filter(({ before, value }) => before !== null && before === value)
    .map(
      ({ kind, signal, value, earliest, time, line, count }) =>
        `${kind} ${signal} ${value} ${(earliest - begin) / 1000} to ${(time - begin) / 1000}, line ${line}, ${count}`,
    );
}

describe('a parameter that is read again with the same value', () => {
  test('after more than three spacings in which its unit was read is a reading from the last one on', async () => {
    const text = snapshots([
      ...every10(0, 60, 'steady good T1'),
      ...every10(70, 90, '. good T1'),
      ...every10(100, 140, 'steady good T1'),
    ]);
    const file = await read(text);
    // Silent from 60 to 100: 40 s at a spacing of 10 s. The header is line 1, the poll of 100 s line 12.
    expect(resumed(file)).toEqual(['reading light steady 60 to 100, line 12, 1']);
    // It is counted as before: the first row is used, all others say nothing new.
    expect(file.input.rows).toMatchObject({ read: 15, used: 1, unchanged: 14 });
  });

  test('after three spacings is nothing', async () => {
    const rows = [
      ...every10(0, 60, 'steady good T1'),
      ...every10(70, 80, '. good T1'),
      ...every10(90, 140, 'steady good T1'),
    ];
    expect(resumed(await read(snapshots(rows)))).toEqual([]);
  });

  test('is nothing where the whole unit was not read, also if its readings have stamps of their own', async () => {
    const rows = [...every10(0, 60, 'steady good T1'), ...every10(300, 350, 'steady good T1')];
    const file = await read(snapshots(rows));
    expect(resumed(file)).toEqual([]);
    expect(file.streams[0]?.gaps).toHaveLength(1);
    const tall = [...every10(0, 60, ''), ...every10(300, 350, '')].flatMap(([seconds]) => [
      `${stamp(seconds)},RO1-A,supply,good`,
      `${stamp(seconds + 4)},RO1-A,light,steady`,
      `${stamp(seconds + 8)},RO1,partner-ready,yes`,
    ]);
    expect(resumed(await read(['time,unit,parameter,value', ...tall, ''].join('\n')))).toEqual([]);
  });

  test('is one where the unit was not read for only a part of it', async () => {
    const rows = [
      ...every10(0, 60, 'steady good T1'),
      ...every10(70, 110, '. good T1'),
      ...every10(300, 350, 'steady good T1'),
    ];
    // From 60 to 300, of which 110 to 300 is a gap of the unit: 50 s remain.
    expect(resumed(await read(snapshots(rows)))).toEqual(['reading light steady 60 to 300, line 14, 1']);
  });

  test('but with another spelling of the same value is one too; with another value it is a change', async () => {
    const blank = every10(70, 90, '. good T1');
    const before = every10(0, 60, 'steady good T1');
    const spelt = await read(snapshots([...before, ...blank, [100, 'ON good T1']]));
    expect(resumed(spelt)).toEqual(['reading light steady 60 to 100, line 12, 1']);
    const changed = await read(snapshots([...before, ...blank, [100, 'off good T1']]));
    expect(resumed(changed)).toEqual([]);
    expect(allChanges(changed.changes).at(-1)).toMatchObject({
      value: 'off',
      before: 'steady',
      earliest: begin + 60_000,
    });
  });

  test('is none of an identity: its empty cells say that nothing is there', async () => {
    const rows = [
      ...every10(0, 60, 'steady good T1'),
      ...every10(70, 110, 'steady good .'),
      ...every10(120, 140, 'steady good T1'),
    ];
    const file = await read(snapshots(rows));
    expect(resumed(file)).toEqual([]);
    expect(
      allChanges(file.changes)
        .filter((c) => c.signal === 'serial')
        .map((c) => c.value),
    ).toEqual(['T1', null, 'T1']);
    const absent = [...every10(0, 60, 'T1'), ...every10(70, 110, ''), ...every10(120, 140, 'T1')].flatMap(
      ([seconds, serial]) => [
        `${stamp(seconds)},RO1-A,light,steady`,
        ...(serial === '' ? [] : [`${stamp(seconds)},RO1-A,serial,T1`]),
      ],
    );
    expect(resumed(await read(['time,unit,parameter,value', ...absent, ''].join('\n')))).toEqual([]);
  });

  test('is one once where it comes more seldom by habit, and again where it stays away for longer still', async () => {
    const isRead = (seconds: number): boolean => seconds % 100 === 0 && (seconds < 500 || seconds > 900);
    const rows = every10(0, 1300, '').flatMap(([seconds]) => [
      `${stamp(seconds)},RO1,partner-ready,yes`,
      ...(isRead(seconds) ? [`${stamp(seconds)},RO1,configuration,current`] : []),
    ]);
    const file = await read(['time,unit,parameter,value', ...rows, ''].join('\n'));
    // Every 100 s beside every 10 s: only the first of its spans is not known to be its habit. Then 400 to 1000 s.
    expect(resumed(file).map((said) => said.replace(/, line.*/, ''))).toEqual([
      'reading configuration current 0 to 100',
      'reading configuration current 400 to 1000',
    ]);
  });
});
