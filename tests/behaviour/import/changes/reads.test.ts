import { describe, expect, test } from 'vitest';
import type { ImportedFile } from '../../../../src/vocabulary.ts';
import { readText, type TextOptions } from '../../../support/read-text.ts';

const begin = Date.UTC(2026, 2, 14, 9);
const stamp = (seconds: number): string => `${new Date(begin + seconds * 1000).toISOString().slice(0, 19)}Z`;

/** Until when each signal of each unit was read, as `unit half|role|pair signal seconds`; both lanes must say the same. */
async function reads(text: string, options: TextOptions = {}): Promise<readonly string[]> {
  const file = await readText('poll.csv', text, options);
  expect(await readText('poll.csv', text, { ...options, isGeneralOnly: true })).toEqual(file);
  return readsOf(file);
}

function readsOf({ streams }: ImportedFile): readonly string[] {
  return streams.flatMap((stream) =>
    stream.reads.map(
      ({ subject, signal, to }) =>
        `${stream.unit} ${subject.half ?? subject.role ?? 'pair'} ${signal} ${(to - begin) / 1000}`,
    ),
  );
}

describe('until when a poll reads a signal', () => {
  test('is the last cell of its column that is not empty', async () => {
    const text = [
      'time,unit,partner-ready,light,load,serial',
      `${stamp(0)},RO1-A,yes,steady,40,T1`,
      `${stamp(10)},RO1-A,yes,steady,41,T1`,
      `${stamp(20)},RO1-A,yes,,42,T1`,
      `${stamp(30)},RO1-A,,,43,`,
      '',
    ].join('\n');
    // A gauge is no state; an empty serial is read: nothing is there.
    expect(await reads(text)).toEqual([
      'RO1-A pair partner-ready 20',
      'RO1-A A light 10',
      'RO1-A A serial 30',
    ]);
  });

  test('is of each unit its own, and a value that is not understood is no reading', async () => {
    const rows = [0, 10, 20].flatMap((seconds) => [
      `${stamp(seconds)},RO1-A,light,${seconds === 20 ? 'purple' : 'steady'}`,
      `${stamp(seconds + 1)},RO1-B,light,off`,
      `${stamp(seconds + 1)},RO1-B,serial,`,
    ]);
    const text = ['time,unit,parameter,value', ...rows, ''].join('\n');
    expect(await reads(text)).toEqual(['RO1-A A light 10', 'RO1-B B light 21']);
  });

  test('is the later one of two parameters that tell the same of the same', async () => {
    const phrasebook = 'parameters: { Ready: { signal: partner-ready }, Ok: { signal: partner-ready } }';
    const rows = [0, 10, 20].map((seconds) => `${stamp(seconds)},RO1,${seconds === 20 ? ',yes' : 'yes,yes'}`);
    const text = ['time,unit,Ready,Ok', ...rows, ''].join('\n');
    expect(await reads(text, { phrasebook })).toEqual(['RO1 pair partner-ready 20']);
    expect(await reads(text.replace('Ready,Ok', 'Ok,Ready'), { phrasebook })).toEqual([
      'RO1 pair partner-ready 20',
    ]);
  });

  test('is right where a poll came round so often that it is only counted', async () => {
    const rows = Array.from({ length: 400 }, (_, cycle) => [
      `${stamp(cycle * 10)},RO1,partner-ready,yes`,
      ...(cycle < 390 ? [`${stamp(cycle * 10)},RO1-A,supply,good`] : []),
      `${stamp(cycle * 10)},RO1-B,supply,good`,
    ]);
    const text = ['time,unit,parameter,value', ...rows.flat(), ''].join('\n');
    expect(await reads(text)).toEqual([
      'RO1 pair partner-ready 3990',
      'RO1-A A supply 3890',
      'RO1-B B supply 3990',
    ]);
  });

  test('is the latest instant, even if the clock was set back after it', async () => {
    const seconds = [0, 100, 110, 120, 60, 70, 80, 90];
    const rows = seconds.map((second) => `${stamp(second)},RO1,partner-ready,yes`);
    expect(await reads(['time,unit,parameter,value', ...rows, ''].join('\n'))).toEqual([
      'RO1 pair partner-ready 120',
    ]);
  });

  test('goes with the repeated hour where the poll shows which it was', async () => {
    // Lisbon, 25 October 2026: 01:00 to 01:59 comes twice. It begins in the repeated hour and goes on into 02:00.
    const rows = ['01:58:00', '01:59:00', '02:00:00', '02:01:00'].map(
      (clock, index) => `2026-10-25 ${clock},RO1-A,${index < 2 ? 'steady' : ''},good`,
    );
    const text = ['time,unit,light,supply', ...rows, ''].join('\n');
    const file = await readText('poll.csv', text, { zone: 'Europe/Lisbon' });
    expect(file.streams[0]?.reads.map(({ to }) => new Date(to).toISOString())).toEqual([
      '2026-10-25T01:59:00.000Z',
      '2026-10-25T02:01:00.000Z',
    ]);
  });

  test('is said of no journal', async () => {
    const file = await readText('a.log', `${stamp(0)} RO1-A partner ready\n${stamp(9)} RO1-A light steady\n`);
    expect(file.streams.map((s) => s.reads)).toEqual([[]]);
  });
});
