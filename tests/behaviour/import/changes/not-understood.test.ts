import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
import type { ImportedFile } from '../../../../src/vocabulary.ts';
import { readText, type TextOptions } from '../../../support/read-text.ts';

const begin = Date.UTC(2026, 2, 14, 9);
const stamp = (seconds: number): string => `${new Date(begin + seconds * 1000).toISOString().slice(0, 19)}Z`;

async function read(name: string, text: string, options: TextOptions = {}): Promise<ImportedFile> {
  const file = await readText(name, text, options);
  expect(await readText(name, text, { ...options, isGeneralOnly: true })).toEqual(file);
  return file;
}

/** Per stream its unit and pair, and how many rows there were in which minute since nine. */
function said({ streams }: ImportedFile): readonly string[] {
  return streams.map(
    ({ unit, subject, notUnderstood }) =>
      `${unit} (${subject.pair}):${notUnderstood.map(({ from, count }) => ` ${(from - begin) / 60_000}:${count}`).join('')}`,
  );
}

describe('rows that were not understood', () => {
  test('of a journal are counted by unit and minute; those of units without a pair too', async () => {
    const text = [
      `${stamp(0)} RO1-A partner ready`,
      `${stamp(59)} RO1-A humming`,
      `${stamp(60)} RO1-A humming`,
      `${stamp(61)} RO1-A whistling`,
      `${stamp(62)} RO1-A light steady`,
      `${stamp(200)} (hall) light steady`,
      `${stamp(201)} (hall) dark`,
      `${stamp(202)} RO1-A user 4 logged on`,
      'no time RO1-A humming',
      '',
    ].join('\n');
    const file = await read('a.log', text, { phrasebook: 'ignore: ["^user .* logged on"]\n' });
    expect(said(file)).toEqual(['RO1-A (RO1): 0:1 1:2', '(hall) (): 3:2']);
    expect(file.input.rows).toMatchObject({ unmatched: 5, rejected: 1, ignored: 1 });
    expect(file.streams[1]).toMatchObject({ first: { line: 6 }, last: { line: 7 }, signals: [], reads: [] });
    expect(file.input.units).toEqual(['RO1-A', '(hall)']);
  });

  test('of a poll are counted once, and not where something in them is new', async () => {
    const text = [
      'time,unit,light,hue,tone',
      `${stamp(0)},RO1-A,off,red,low`, // new: used
      `${stamp(10)},RO1-A,off,red,low`,
      `${stamp(20)},RO1-A,purple,red,low`,
      `${stamp(60)},RO1-A,steady,red,low`, // new: used
      `${stamp(70)},RO1-A,steady,,`,
      `${stamp(80)},RO1-A,steady,,low`,
      `${stamp(90)},RO1-B,,red,`,
      `${stamp(100)},RO2-A,,red,`,
      '',
    ].join('\n');
    const file = await read('a.csv', text);
    // Of RO2 nothing else is known: its name may be that of anything.
    expect(said(file)).toEqual(['RO1-A (RO1): 0:2 1:1', 'RO1-B (RO1): 1:1', 'RO2-A (): 1:1']);
    expect(file.input.rows).toMatchObject({ used: 2, unchanged: 1, unmatched: 5 });
    expect(allChanges(file.changes).map((c) => file.streams[c.stream]?.unit)).toEqual(['RO1-A', 'RO1-A']);
  });

  test('add up to the unmatched rows, in the order of time even if the rows are not', async () => {
    const seconds = [300, 0, 60, 61, 240, 241, 10, 180];
    const rows = seconds.map(
      (second, index) => `${stamp(second)},RO1-A,${index % 2 === 0 ? 'humming' : 'buzzing'}`,
    );
    const file = await read('a.csv', ['time,unit,message', ...rows, ''].join('\n'));
    expect(said(file)).toEqual(['RO1-A (RO1): 0:2 1:2 3:1 4:2 5:1']);
    expect(file.input.rows.unmatched).toBe(8);
  });

  test('go with the repeated hour where the poll shows which it was', async () => {
    const clocks = ['01:58:05', '01:59:05', '02:00:05', '02:01:05'];
    const rows = clocks.map((clock) => `2026-10-25 ${clock},RO1-A,off,red`);
    const file = await read('a.csv', ['time,unit,light,hue', ...rows, ''].join('\n'), {
      zone: 'Europe/Lisbon',
    });
    // It begins in the repeated hour and goes on into 02:00, which is 02:00 UTC: 01:59 was 01:59 UTC. 01:58 is used.
    expect(
      file.streams[0]?.notUnderstood.map(({ from }) => new Date(from).toISOString().slice(11, 16)),
    ).toEqual(['01:59', '02:00', '02:01']);
  });

  test('take no more memory than for so many minutes; what comes seldom has room of its own', async () => {
    const poll = Array.from(
      { length: 60_000 },
      (_, minute) => `${stamp(minute * 60)},RO1-A,${minute < 59_999 ? 'off' : 'purple'},red`,
    );
    const file = await read('a.csv', ['time,unit,light,hue', ...poll, ''].join('\n'));
    const minutes = file.streams[0]?.notUnderstood.map(({ from }) => (from - begin) / 60_000) ?? [];
    // The first row is used; fifty thousand minutes follow it, and the last row, whose value is not understood.
    expect([minutes.length, minutes[0], minutes.at(-2), minutes.at(-1)]).toEqual([50_001, 1, 50_000, 59_999]);
  }, 60_000);
});
