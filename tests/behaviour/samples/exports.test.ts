import { describe, expect, test } from 'vitest';
import { encode, encodings } from '../../../samples/encode.ts';
import {
  inOrder,
  journalCsv,
  messagesOf,
  readingsCsv,
  snapshotsByHalf,
  snapshotsPerRole,
  textLog,
} from '../../../samples/exports.ts';
import {
  fieldNotes,
  jsonLog,
  jsonSnapshots,
  keyValueLog,
  keyValueSnapshots,
  rfc3164Log,
  rfc5424Log,
} from '../../../samples/lines.ts';
import type { PollStyle } from '../../../samples/polls.ts';
import { formatStamp, type StampStyle, splitStamp } from '../../../samples/stamps.ts';
import { cleanSwap } from '../../../samples/stories/clean-swap.ts';
import { wontSync } from '../../../samples/stories/wont-sync.ts';
import { stateAt } from '../../../samples/story.ts';
import { journalWording, plain } from '../../../samples/wordings.ts';
import { readText } from '../../support/read-text.ts';

const story = cleanSwap();
const utc: StampStyle = { form: 'iso-offset', zone: 'UTC', decimals: 3 };
const style: PollStyle = { spacingSeconds: 60, phaseSeconds: 3, stamp: utc, delimiter: ',', wording: plain };
const removal = Date.UTC(2026, 2, 14, 9, 14, 5, 212);
const said = [{ time: removal, unit: 'RO1-B', text: 'say "module" removed' }];
const rowsOf = (text: string): readonly string[] => text.trimEnd().split('\n');

describe('stamps', () => {
  // 5 July 2026, 13:04:09.060 UTC is 14:04:09.060 in Lisbon, which keeps summer time (UTC+1) in July.
  const time = Date.UTC(2026, 6, 5, 13, 4, 9, 60);
  const lisbon = (part: Partial<StampStyle>): StampStyle => ({
    form: 'iso',
    zone: 'Europe/Lisbon',
    decimals: 3,
    ...part,
  });
  test.each<[Partial<StampStyle>, string]>([
    [{}, '2026-07-05 14:04:09.060'],
    [{ form: 'iso-offset' }, '2026-07-05T14:04:09.060+01:00'],
    [{ form: 'day-first', mark: ',' }, '05/07/2026 14:04:09,060'],
    [{ form: 'month-first', decimals: 0 }, '07/05/2026 14:04:09'],
    [{ form: 'day-first-12' }, '05/07/2026 02:04:09.060 PM'],
    [{ form: 'no-year', decimals: 0 }, 'Jul  5 14:04:09'],
    // 20,639 days from 1 January 1970 to 5 July 2026, times 86,400 s, plus 13 h 4 min 9 s.
    [{ form: 'epoch-s' }, '1783256649.060'],
    [{ form: 'epoch-ms' }, '1783256649060'],
    [{ aheadSeconds: 37.5 }, '2026-07-05 14:04:46.560'],
    [{ aheadSeconds: -9.061, decimals: 0 }, '2026-07-05 14:03:59'],
  ])('%j', (part, expected) => {
    expect(formatStamp(time, lisbon(part))).toBe(expected);
  });
  test('in two cells', () => {
    expect(splitStamp(time, lisbon({ form: 'day-first-12' }))).toEqual(['05/07/2026', '02:04:09.060 PM']);
    expect(() => splitStamp(time, lisbon({ form: 'epoch-s' }))).toThrow(RangeError);
  });
});

describe('encodings', () => {
  // The euro sign is U+20AC: E2 82 AC in UTF-8, byte 80 in Windows-1252 (WHATWG Encoding Standard, index windows-1252).
  test.each([
    ['utf-8', [0x41, 0xe2, 0x82, 0xac]],
    ['utf-8-bom', [0xef, 0xbb, 0xbf, 0x41, 0xe2, 0x82, 0xac]],
    ['utf-16le', [0x41, 0x00, 0xac, 0x20]],
    ['utf-16le-bom', [0xff, 0xfe, 0x41, 0x00, 0xac, 0x20]],
    ['utf-16be', [0x00, 0x41, 0x20, 0xac]],
    ['utf-16be-bom', [0xfe, 0xff, 0x00, 0x41, 0x20, 0xac]],
    ['windows-1252', [0x41, 0x80]],
  ] as const)('%s', (encoding, bytes) => {
    expect([...encode('A\u20AC', encoding)]).toEqual(bytes);
  });
  test('Windows-1252 refuses what it does not have', () => {
    expect(() => encode('\u4E00', 'windows-1252')).toThrow(RangeError);
  });
});

describe('lines', () => {
  test('RFC 5424 and RFC 3164', () => {
    expect(rfc5424Log(said, 'UTC')).toBe(
      '<133>1 2026-03-14T09:14:05.212+00:00 RO1-B pair - - - say "module" removed\n',
    );
    expect(rfc3164Log(said, 'UTC', 60)).toBe('<133>Mar 14 09:15:05 RO1-B say "module" removed\n');
    expect(() => rfc5424Log(messagesOf(story, journalWording), 'UTC')).toThrow(RangeError);
  });
  test('key=value, JSON and text', () => {
    expect(keyValueLog(said, utc)).toBe(
      'time=2026-03-14T09:14:05.212+00:00 unit=RO1-B message="say \\"module\\" removed"\n',
    );
    expect(jsonLog(said, utc)).toBe(
      '{"time":"2026-03-14T09:14:05.212+00:00","unit":"RO1-B","message":"say \\"module\\" removed"}\n',
    );
    expect(textLog(said, utc)).toBe('2026-03-14T09:14:05.212+00:00 [RO1-B] say "module" removed\n');
  });
  test("the technician's notes hold each act with its minute", () => {
    expect(rowsOf(fieldNotes(story, 'Europe/Lisbon'))).toEqual([
      'Pair RO1',
      '2026-03-14',
      '09:14 pulled standby from slot B',
      '09:15 fitted new module in slot B',
      '09:16 reflash started in slot B',
      '09:18 reflash finished in slot B',
      '09:41 switched over',
      '09:44 pulled standby from slot A',
      '09:45 fitted new module in slot A',
      '09:46 reflash started in slot A',
      '09:48 reflash finished in slot A',
    ]);
  });
});

describe('polls', () => {
  test('say what the story was at the instant of each, however late it comes', () => {
    const rows = rowsOf(snapshotsByHalf(story, { ...style, jitterSeconds: 20, seed: 5 })).slice(1);
    const late = new Set<number>();
    for (const row of rows) {
      const [stamp = '', unit = '', present, ready, configuration, role, model, serial, firmware, light] =
        row.split(',');
      const time = Date.parse(stamp);
      const { A, B, pair } = stateAt(story, time);
      const half = unit.endsWith('A') ? A : B;
      expect([present, ready, configuration]).toEqual(Object.values(pair));
      expect([role, model, serial, firmware, light]).toEqual([
        half.role,
        half.model,
        half.serial,
        half.firmware,
        half.light,
      ]);
      late.add((time - story.from - 3000) % 60_000);
    }
    expect(Math.max(...late)).toBeLessThan(20_000);
    expect(late.size).toBeGreaterThan(rows.length / 4);
  });
  test('are the same for the same seed only', () => {
    const jittered = (seed: number): string => readingsCsv(story, { ...style, jitterSeconds: 20, seed });
    expect(jittered(5)).toBe(jittered(5));
    expect(jittered(5)).not.toBe(jittered(6));
  });
  test('of two pairs stand in the order of time', () => {
    const second = { ...story, pair: 'RO2', from: story.from + 20_000 };
    const rows = rowsOf(readingsCsv([story, second], style))
      .slice(1)
      .map((row) => row.split(','));
    const times = rows.map(([stamp]) => Date.parse(stamp ?? ''));
    expect(times).toEqual([...times].sort((a, b) => a - b));
    expect(new Set(rows.map(([, unit]) => unit))).toEqual(
      new Set(['RO1', 'RO1-A', 'RO1-B', 'RO2', 'RO2-A', 'RO2-B']),
    );
  });
  test('with a comma in the load: a cell that holds the delimiter is quoted', () => {
    const row = rowsOf(readingsCsv(story, { ...style, load: ',' })).find((r) => r.includes(',load,'));
    expect(row).toMatch(/^2026-03-14T08:52:03\.000\+00:00,RO1-A,load,"\d\d,\d"$/);
  });
});

describe('every export', () => {
  const messages = messagesOf(story, plain);
  const exported: readonly (readonly [string, string])[] = [
    ['readings.csv', readingsCsv(story, style)],
    ['late.csv', readingsCsv(story, { ...style, jitterSeconds: 30 })],
    ['split.csv', readingsCsv(story, { ...style, split: true, stamp: { ...utc, form: 'iso' } })],
    ['load.csv', readingsCsv(story, { ...style, delimiter: ';', load: ',' })],
    ['halves.csv', snapshotsByHalf(story, { ...style, load: '.' })],
    ['roles.csv', snapshotsPerRole(story, style)],
    ['pairs.csv', readingsCsv([story, wontSync()], style)],
    ['journal.csv', journalCsv(messages, ['time', 'unit', 'message'], ';', utc)],
    ['pairs.log', textLog(inOrder([...messages, ...messagesOf(wontSync(), plain)]), utc)],
    ['5424.log', rfc5424Log(messages, 'Europe/Lisbon')],
    ['3164.log', rfc3164Log(messages, 'UTC')],
    ['entries.log', keyValueLog(messages, utc)],
    ['entries.jsonl', jsonLog(messages, utc)],
    ['polls.log', keyValueSnapshots(story, style)],
    ['polls.jsonl', jsonSnapshots(story, style)],
    ['notes.txt', fieldNotes(story, 'UTC')],
  ];
  const used = async (name: string, content: string | Uint8Array): Promise<unknown> => {
    const { input } = await readText(name, content, { year: 2026, zone: 'UTC' });
    expect({ name, unmatched: input.unmatched, rejected: input.rows.rejected }).toEqual({
      name,
      unmatched: [],
      rejected: 0,
    });
    expect(input.rows.used).toBeGreaterThan(8);
    return input.rows;
  };
  test.each(exported)('%s is read with the built-in phrasebook to its last row', async (name, text) => {
    await used(name, text);
  });
  test.each(encodings)('in %s is read alike, to the letter', async (encoding) => {
    const wording = 'caf\u00E9 \u201Cpump\u201D 5 \u20AC';
    const text = textLog([...messages, { time: story.to, unit: 'RO1', text: wording }], utc);
    const { input } = await readText('a.log', encode(text, encoding));
    expect(input.encoding).toBe(encoding.replace('-bom', ''));
    expect(input.unmatched.map((u) => u.wording)).toEqual([wording]);
    expect(input.rows).toMatchObject({ read: messages.length + 1, used: messages.length, rejected: 0 });
  });
});
