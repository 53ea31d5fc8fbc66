import { describe, expect, test } from 'vitest';
import { allChanges, changeAt } from '../../../src/changes.ts';
import type { ImportedFile } from '../../../src/vocabulary.ts';
import { analyseTexts, readText } from '../../support/read-text.ts';

const header = 'time,unit,parameter,value\n';
const row = (second: string, unit: string, parameter: string, value: string): string =>
  `2026-03-14 10:${second}Z,${unit},${parameter},${value}\n`;
const ids = ({ notices }: ImportedFile): readonly string[] => notices.map((n) => n.id);

describe('a file that can not be used', () => {
  test.each([
    ['empty', 'a.csv', '', 'a.csv: the file is empty.'],
    ['header only', 'a.csv', header, 'a.csv: the file has a header but no rows.'],
    ['binary', 'a.csv', '\u0000\u0001\u0002\u0003\u0004\u0000', 'a.csv: this is a binary file, not text.'],
    [
      'an unknown layout',
      'a.csv',
      'a,b\n1,2\n',
      /the layout is not known: lines: no line begins with a timestamp .*; field-notes: /,
    ],
    [
      'no time that can be read',
      'a.csv',
      `${header}now,RO1,light,off\nthen,RO1,light,off\n`,
      /^a.csv:2: no row/,
    ],
    ['a date in notes', 'a.txt', 'RO1 on 03/04/2026\n09:14 pulled slot B\n', /^a.txt:1: .*Set time.order/],
    ['notes without a date', 'a.txt', 'RO1\n09:14 pulled slot B\n', /^a.txt:2: .*Put a line with the date/],
  ])('%s: one line says what and what to do', async (_name, file, text, message) => {
    await expect(readText(file, text)).rejects.toThrow(message);
  });
  test('a day and month that nothing settles: both readings are named, and where to say it', async () => {
    const text = `${header}03/04/2026 10:00:00,RO1-A,light,off\n05/06/2026 10:00:00,RO1-A,light,off\n`;
    await expect(readText('a.csv', text)).rejects.toThrow(/^a.csv:2: .*3 Apr 2026.*4 Mar 2026.*time\.order/);
  });
  test.each([
    ['time: { format: "dd/MM/yyyy QQ" }', 'time.format: "QQ" is no field'],
    ['time: { format: "HH:mm" }', 'time.format: it has no month and day'],
    ['time: { format: "dd/MM/yyyy hh:mm" }', 'time.format: a 12-hour clock (h) needs a'],
    ['tiem: { zone: UTC }', 'tiem is not a key here'],
    ['units: [{ pattern: "(?<pair>RO[12]" }]', 'units[0].pattern is not a valid pattern'],
    ['messages: [{ when: "x", signal: light }]', 'messages[0] says no value for light'],
    [
      'parameters: { X: { signal: light, values: { "1": green } } }',
      'parameters.X.values has "green", which is not a value of light',
    ],
  ])('a phrasebook %s', async (phrasebook, message) => {
    await expect(
      readText('a.csv', `${header}${row('00:00', 'RO1-A', 'light', 'off')}`, { phrasebook }),
    ).rejects.toThrow(`phrasebook.yaml: ${message}`);
  });
});

describe('a file', () => {
  test('has a stream of a unit of which nothing was understood too, without a pair', async () => {
    const text = `${header}${row('00:00', 'RO9', 'colour', 'red')}${row('00:10', 'RO1-A', 'light', 'off')}`;
    const read = await readText('a.csv', text);
    expect(read.streams.map((s) => [s.unit, s.subject.pair])).toEqual([
      ['RO9', ''],
      ['RO1-A', 'RO1'],
    ]);
    expect(allChanges(read.changes).map((c) => read.streams[c.stream]?.unit)).toEqual(['RO1-A']);
    expect(read.input.units).toEqual(['RO9', 'RO1-A']);
  });
  test.each([
    [
      'a poll of unknown units, parameters and values',
      'a.csv',
      `${header}${row('00:00', '??', 'light', 'off')}${row('00:10', 'RO1-A', 'light', 'off')}${row('00:20', 'RO1-A', 'hue', 'red')}${row('00:30', 'RO1-A', 'light', 'red')}`,
    ],
    [
      'a journal whose first and last entries mean nothing',
      'a.log',
      '2026-03-14T10:00:00Z RO1-A user 4 logged on\n2026-03-14T10:00:10Z RO1-A partner ready\n2026-03-14T10:00:30Z (hmi) humming\n',
    ],
    [
      'rows that are out of order',
      'b.csv',
      `${header}${row('00:10', 'RO1-A', 'light', 'off')}${row('00:30', 'RO1-A', 'hue', 'red')}${row('00:00', 'RO1-A', 'light', 'off')}`,
    ],
    [
      'a JSON line that is of no unit that is known',
      'a.jsonl',
      ['00:00', '00:10', '00:30']
        .map(
          (at) =>
            `{"time":"2026-03-14T10:${at}Z","unit":"${at === '00:10' ? 'RO1-A' : '??'}","light":"off"}\n`,
        )
        .join(''),
    ],
  ])('reaches from the first to the last stamp of all its rows: %s', async (_name, name, text) => {
    const phrasebook = 'ignore: ["^user .* logged (on|off)"]\n';
    for (const isGeneralOnly of [false, true]) {
      const { input } = await readText(name, text, { phrasebook, isGeneralOnly });
      expect([input.from, input.to]).toEqual([0, 30].map((second) => Date.UTC(2026, 2, 14, 10, 0, second)));
    }
  });
  test('reaches through the repeated hour as its rows do', async () => {
    // Lisbon, 25 October 2026: after 01:59 it is 01:00 once more, and 02:00 is 02:00 UTC. The poll goes on into 02:00.
    const clocks = ['01:58', '01:59', '02:00', '02:01'];
    const rows = clocks.map((clock) => `2026-10-25 ${clock}:00,RO1-A,light,off\n`);
    const { input } = await readText('a.csv', header + rows.join(''), { zone: 'Europe/Lisbon' });
    expect([input.from, input.to]).toEqual([Date.UTC(2026, 9, 25, 1, 58), Date.UTC(2026, 9, 25, 2, 1)]);
  });
  test('lists unknown wording once for a row, the most frequent first', async () => {
    const text =
      'time,unit,light,firmware,hue\n2026-03-14 10:00:00Z,??,off,6,red\n2026-03-14 10:00:00Z,RO1-A,off,6,red\n2026-03-14 10:00:10Z,RO1-A,off,6,red\n';
    expect((await readText('a.csv', text)).input.unmatched).toEqual([
      { wording: 'parameter hue', count: 2, firstLine: 3 },
      { wording: 'unit ??', count: 1, firstLine: 2 },
    ]);
  });
  test('polled every 10 s has that spacing, and a gap where 40 s pass; values of one poll share a stamp', async () => {
    const polls = ['00:00', '00:10', '00:20', '01:00', '01:10', '01:20', '01:50'];
    const text = polls
      .map((at) => row(at, 'RO1-A', 'light', 'off') + row(at, 'RO1-A', 'role', 'standby'))
      .join('');
    const [stream] = (await readText('a.csv', header + text)).streams;
    // Six spacings: 10, 10, 40, 10, 10, 30 s. Median 10 s; longer than three times that: the 40 s only.
    expect(stream?.spacing).toBe(10_000);
    // Line 1 is the header, each poll has two lines: 00:20 ends in line 7, 01:00 begins in line 8.
    expect(stream?.gaps.map((g) => [g.before.line, g.after.line])).toEqual([[7, 8]]);
  });
  test('tells what it could not use', async () => {
    const text = `${header}${row('00:00', 'RO1-A', 'light', 'off')}2026-02-30 10:00:00Z,RO1-A,light,off\n${row('00:20', 'RO1-A', 'light', 'mauve')}2026-03-14`;
    const read = await readText('a.csv', text);
    expect(ids(read)).toEqual(['rejected-rows', 'unmatched-wording', 'damaged-tail']);
    expect(read.notices.map((n) => n.lines.map((l) => l.line))).toEqual([[3], [4], [5]]);
  });
  test('without a zone says that it was read as UTC; --zone and the phrasebook settle it', async () => {
    const text = `${header}2026-07-14 10:00:00,RO1-A,light,off\n`;
    const bare = await readText('a.csv', text);
    expect([ids(bare), changeAt(bare.changes, 0)?.time]).toEqual([
      ['zone-assumed'],
      Date.UTC(2026, 6, 14, 10),
    ]);
    // Lisbon keeps UTC+1 in July.
    const zoned = await readText('a.csv', text, { phrasebook: 'time: { zone: Europe/Lisbon }' });
    expect([ids(zoned), changeAt(zoned.changes, 0)?.time]).toEqual([[], Date.UTC(2026, 6, 14, 9)]);
    expect(zoned.input.zone).toBe('Europe/Lisbon');
  });
  test.each(['utf-16le', 'utf-16be'])('in %s reads as in UTF-8', async (encoding) => {
    const text = `\uFEFF${header}${row('00:00', 'RO1-A', 'model', 'Tern-2 é')}`;
    const bytes = new Uint8Array(text.length * 2);
    const view = new DataView(bytes.buffer);
    for (let at = 0; at < text.length; at += 1)
      view.setUint16(at * 2, text.charCodeAt(at), encoding === 'utf-16le');
    const read = await readText('a.csv', bytes, { chunk: 7 });
    expect([read.input.encoding, changeAt(read.changes, 0)?.value]).toEqual([encoding, 'Tern-2 é']);
  });
  test('has a resolution of a second where no stamp has decimals', async () => {
    const one = row('00:00', 'RO1-A', 'light', 'off');
    expect((await readText('a.csv', header + one)).resolution).toBe(1000);
    expect((await readText('a.csv', header + one.replace('00Z', '00.000Z'))).resolution).toBe(0);
  });
  test('whose bytes show late that they are no UTF-8 is read as Windows-1252, one with a damaged byte is not', async () => {
    const filler = row('00:00', 'RO1-A', 'light', 'off').repeat(2000);
    const late = row('00:10', 'RO1-A', 'model', 'Tern-2 \u00e9');
    const bytes = (text: string): Uint8Array => Uint8Array.from(text, (c) => c.charCodeAt(0));
    const read = await readText('a.csv', bytes(header + filler + late));
    expect(filler.length).toBeGreaterThan(65_536);
    expect([read.input.encoding, allChanges(read.changes).at(-1)?.value]).toEqual([
      'windows-1252',
      'Tern-2 \u00e9',
    ]);
    const damaged = new TextEncoder().encode(`${header}${filler}${late}`);
    const at = damaged.length - 20;
    damaged[at] = 0xff;
    expect((await readText('a.csv', damaged)).input.encoding).toBe('utf-8');
  });
  test('says its site where a unit pattern names one', async () => {
    const phrasebook = 'name: Marrow Bay\nunits: [{ pattern: "^(?<site>\\\\w+):(?<pair>\\\\w+)$" }]\n';
    const text = `${header}${row('00:00', 'NORTH:RO1', 'partner ready', 'yes')}${row('00:00', 'RO2', 'partner ready', 'yes')}`;
    const { timelines } = await analyseTexts({ 'a.csv': text }, { phrasebook });
    expect(timelines.map((t) => [t.pair, t.site])).toEqual([
      ['RO1', 'NORTH'],
      ['RO2', 'Marrow Bay'],
    ]);
  });
});

test('a gap is not lost where the poll becomes faster later', async () => {
  // 300 readings 60 s apart, a gap of 100 s, then 2000 readings 30 s apart: the usual spacing is 30 s, and 100 s a gap.
  const times = [
    ...Array.from({ length: 300 }, (_, i) => i * 60),
    ...Array.from({ length: 2000 }, (_, i) => 299 * 60 + 100 + i * 30),
  ];
  const rows = times.map((s) => `${new Date(s * 1000).toISOString()},RO1,partner ready,yes\n`);
  const [stream] = (await readText('a.csv', header + rows.join(''))).streams;
  expect(stream?.spacing).toBe(30_000);
  expect(stream?.gaps.map((g) => g.after.time - g.before.time)).toEqual([100_000]);
});
