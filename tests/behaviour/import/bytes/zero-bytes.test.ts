import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
import type { ImportedFile } from '../../../../src/vocabulary.ts';
import { readText, type TextOptions } from '../../../support/read-text.ts';

const zeros = (count: number): string => '\0'.repeat(count);

/** Reads a file in both lanes and in several chunk sizes, which must all say the same. */
async function read(
  name: string,
  content: string | Uint8Array,
  options: TextOptions = {},
): Promise<ImportedFile> {
  const file = await readText(name, content, options);
  for (const chunk of [1, 7, 50, 65_536])
    for (const isGeneralOnly of [true, false])
      expect(await readText(name, content, { ...options, chunk, isGeneralOnly })).toEqual(file);
  return file;
}

const notice = ({ notices }: ImportedFile): string | undefined =>
  notices.find((n) => n.what.includes('zero byte'))?.what;

const sayings = ({ changes }: ImportedFile): readonly string[] =>
  allChanges(changes).map(
    ({ line, signal, value, text }) => `${line} ${signal} ${value} ${text.includes('\0')}`,
  );

const lines = (stamp: (minute: number) => string, rest: readonly string[]): readonly string[] =>
  rest.map((words, minute) => stamp(minute) + words);
const iso = (minute: number): string => `2026-03-01T10:0${minute}:00Z`;

/** Each layout: its name, and three lines of which the second is to stand behind zeros. */
const layouts: readonly (readonly [string, string, string, readonly string[]])[] = [
  [
    'a leading stamp',
    'a.log',
    '',
    lines(iso, [' RO1-A light off', ' RO1-A light steady', ' RO1-A light off']),
  ],
  [
    'RFC 5424',
    'a.log',
    '',
    lines((m) => `<13>1 ${iso(m)} RO1-A app - - - `, ['light off', 'light steady', 'light off']),
  ],
  [
    'RFC 3164',
    'a.log',
    '',
    lines((m) => `<13>Mar  1 10:0${m}:00 RO1-A `, ['light off', 'light steady', 'light off']),
  ],
  [
    'JSON lines',
    'a.log',
    '',
    lines((m) => `{"time":"${iso(m)}","unit":"RO1-A","light":`, ['"off"}', '"steady"}', '"off"}']),
  ],
  ['key=value', 'a.log', '', lines((m) => `time=${iso(m)} unit=RO1-A light=`, ['off', 'steady', 'off'])],
  [
    'field notes',
    'a.txt',
    'RO1 1 Mar 2026\n',
    lines((m) => `10:0${m} `, ['pulled slot B', 'inserted slot B', 'light off']),
  ],
  [
    'a journal',
    'a.csv',
    'time,unit,message\n',
    lines(iso, [',RO1-A,light off', ',RO1-A,light steady', ',RO1-A,light off']),
  ],
  [
    'readings',
    'a.csv',
    'time,unit,parameter,value\n',
    lines(iso, [',RO1-A,light,off', ',RO1-A,light,steady', ',RO1-A,light,off']),
  ],
  ['snapshots', 'a.csv', 'time;unit;light\n', lines(iso, [';RO1-A;off', ';RO1-A;steady', ';RO1-A;off'])],
  [
    'quoted cells',
    'a.csv',
    '"time","unit","light"\n',
    lines((m) => `"${iso(m)}","RO1-A",`, ['"off"', '"steady"', '"off"']),
  ],
];

describe('zero bytes before a line', () => {
  test('leave the line what it is, and are told of', async () => {
    const file = await read('nul.log', readFileSync(join('tests', 'fixtures', 'faults', 'nul.log')));
    expect(allChanges(file.changes).map((c) => `${c.line} ${c.signal}`)).toEqual([
      '1 partner-ready',
      '2 restart',
      '3 partner-ready',
      '4 link-a',
    ]);
    expect(file.input.rows).toMatchObject({ read: 4, used: 4 });
    expect(file.notices.filter((n) => n.id === 'rejected-rows')).toMatchObject([
      { count: 1, lines: [{ line: 2, text: '2026-03-01T10:05:00Z RO1-A module restart' }] },
    ]);
    expect(notice(file)).toBe(
      '40 zero bytes before line 2, as after a loss of power: the line was used, but what should have been written there is lost.',
    );
  });

  test.each(layouts)('in %s', async (_name, file, head, [first = '', second = '', third = '']) => {
    const options = { year: 2026 };
    const whole = await read(file, `${head}${first}\n${second}\n${third}\n`, options);
    expect(whole.changes).toHaveLength(3);
    for (const count of [1, 5000]) {
      const torn = await read(file, `${head}${first}\n${zeros(count)}${second}\r\n${third}\n`, options);
      expect(sayings(torn)).toEqual(sayings(whole));
      expect(torn.input.rows).toEqual(whole.input.rows);
      const line = head === '' ? 2 : 3;
      expect(notice(torn)).toContain(
        count === 1 ? `One zero byte before line ${line},` : `5000 zero bytes before line ${line},`,
      );
    }
  });

  test('behind a line that was never ended: what follows them is used', async () => {
    const text = `${iso(0)} RO1-A light off\n${iso(1)} RO1-A light fla${zeros(30)}${iso(2)} RO1-A light steady\n`;
    const file = await read('a.log', text);
    expect(sayings(file)).toEqual(['1 light off false', '2 light steady false']);
    expect(file.input.rows).toMatchObject({ read: 2, used: 2 });
  });

  test('before the first line, before the header, and in several places', async () => {
    const poll = `${zeros(40)}time,unit,light\n${iso(0)},RO1-A,off\n${zeros(9)}${iso(1)},RO1-A,steady\n${zeros(9)}${iso(2)},RO1-A,off`;
    const file = await read('a.csv', poll);
    expect(file.input.layout).toBe('snapshots');
    expect(sayings(file).map((s) => s.slice(0, 9))).toEqual(['2 light o', '3 light s', '4 light o']);
    expect(notice(file)).toContain('58 zero bytes before 3 lines, the first of them line 1,');
  });

  test('more of them than there is text, and more than a line may have', async () => {
    const log = `${zeros(3000)}${iso(0)} RO1-A light off\n`;
    expect((await read('a.log', log)).input.rows).toMatchObject({ read: 1, used: 1 });
    const far = `${iso(0)},RO1-A,off\n${zeros(3_000_000)}${iso(1)},RO1-A,steady\n`;
    for (const [name, head] of [
      ['a.csv', 'time,unit,light\n'],
      ['a.log', ''],
    ] as const)
      for (const isGeneralOnly of [true, false])
        for (const chunk of [65_536, 4_000_000]) {
          const text = head + (head === '' ? far.replaceAll(',RO1-A,', ' RO1-A light ') : far);
          const file = await readText(name, text, { chunk, isGeneralOnly });
          expect(file.input.rows).toMatchObject({ read: 2, used: 2 });
          expect(notice(file)).toContain('3000000 zero bytes');
        }
  });

  test('more of them than what a file is recognised by', async () => {
    const text = `${zeros(100_001)}time,unit,light\n${iso(0)},RO1-A,off\n${iso(1)},RO1-A,steady\n`;
    for (const chunk of [999, 65_536, 200_000]) {
      const file = await readText('a.csv', text, { chunk });
      expect(file.input).toMatchObject({ layout: 'snapshots', rows: { read: 2, used: 2 } });
      expect(notice(file)).toContain('100001 zero bytes before line 1,');
    }
  });

  test('and nothing else are no log: one line says so', async () => {
    for (const count of [1, 7, 5000, 200_000])
      for (const chunk of [1000, 65_536])
        await expect(readText('a.log', zeros(count), { chunk })).rejects.toThrow(
          'a.log: it contains only zero bytes, as after a loss of power. Export it again, or use another source.',
        );
  });

  test('are two each in UTF-16', async () => {
    const text = `time,unit,light\n${iso(0)},RO1-A,off\n${zeros(20)}${iso(1)},RO1-A,steady\n`;
    const bytes = new Uint8Array(Array.from(text, (c) => [c.charCodeAt(0), 0]).flat());
    const file = await read('a.csv', bytes);
    expect(file.input.encoding).toBe('utf-16le');
    expect(notice(file)).toContain('40 zero bytes before line 3');
  });

  test('at the end of a line, in the midst of one, or alone, are no line: nothing is guessed', async () => {
    const text = [
      'time,unit,parameter,value',
      `${iso(0)},RO1-A,light,off${zeros(9)}`,
      `${iso(1)},RO1-A,model,T\0n`,
      zeros(3),
      `${iso(2)},RO1-A,light,steady`,
      '',
    ].join('\n');
    const file = await read('a.csv', text);
    expect(notice(file)).toBeUndefined();
    expect(allChanges(file.changes).map((c) => [c.line, c.value])).toEqual([
      [3, 'T\0n'],
      [5, 'steady'],
    ]);
    expect(file.input.rows).toMatchObject({ read: 4, used: 2, unmatched: 1, rejected: 1 });
  });
});

describe('a cell of 30 MB', () => {
  test.each(['', '"'])('is one row that is rejected, between quotes %j', async (quote) => {
    const cell = quote + 'x'.repeat(30_000_000) + quote;
    const text = `time,unit,light\n${iso(0)},RO1-A,off\n${iso(1)},RO1-A,${cell}\n${iso(2)},RO1-A,steady\n`;
    for (const isGeneralOnly of [true, false]) {
      const file = await readText('a.csv', text, { isGeneralOnly });
      expect(file.input.rows).toMatchObject({ read: 3, used: 2, rejected: 1 });
      expect(allChanges(file.changes).map((c) => c.line)).toEqual([2, 4]);
    }
  });
});
