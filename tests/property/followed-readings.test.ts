/** A file that is followed as it grows must give at any moment what reading its whole lines at once gives. */
import { afterAll, describe, expect, test } from 'vitest';
import { seeded } from '../../samples/random.ts';
import { fed, feed, type Told, utf16 } from '../support/feed-file.ts';
import { calm, longPoll } from '../support/long-polls.ts';
import { clock, journal, oddities, plain, poll, stamps } from '../support/odd-polls.ts';

afterAll(() => {
  console.log(
    `followed: ${fed.files} files alike at ${fed.cuts} cuts, ${fed.inLines} of them in the midst of a line`,
  );
});

const { plain: iso = clock, european = clock, utc = clock } = stamps;

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Lines of a log of three units, in one way of writing them. */
function lines(
  write: (at: string, unit: string, message: string, index: number) => string,
  count = 1800,
): string {
  const messages = ['partner ready', 'partner not ready', 'light steady', 'humour good', 'module restart'];
  const written = Array.from({ length: count }, (_, i) =>
    write(utc(i * 3), ['RO1-A', 'RO1-B', 'RO2'][i % 3] ?? '', messages[(i * i + (i >> 4)) % 5] ?? '', i),
  );
  return `${written.join('\n')}\n`;
}

const month = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
const layouts: Readonly<Record<string, readonly [string, Told]>> = {
  'a stamp, a unit and a message': [lines((at, unit, message) => `${at} ${unit} ${message}, as ever`), {}],
  'RFC 5424': [lines((at, unit, m, i) => `<134>1 ${at} ${unit} watch ${i} - - ${m}`), {}],
  'RFC 3164': [
    lines(
      (at, unit, m) => `<134>${month[2]} ${at.slice(8, 10)} ${at.slice(11, 19)} ${unit} watch: ${m}`,
      2400,
    ),
    { year: 2026 },
  ],
  'JSON lines': [lines((time, unit, message) => JSON.stringify({ time, unit, message }), 1500), {}],
  'key=value': [lines((at, unit, m) => `time=${at} unit=${unit} message="${m}"`, 1500), {}],
  'records of several lines': [
    lines(
      (at, unit, m, i) => `${at} [${unit}]\n\n    ${m.split(' ').join('\n    ')}${i % 7 === 0 ? '\n\n' : ''}`,
      2200,
    ),
    { phrasebook: 'files: [{ match: "*", record: "^\\\\d{4}-" }]\n' },
  ],
  'field notes': [
    `RO1 14 March 2026\n${lines((at, unit, _, i) => `${at.slice(11, 16)} ${['pulled standby from slot B', 'light steady, waited', 'fitted module'][i % 3]} ${unit}`, 2500)}`,
    {},
  ],
  snapshots: [
    `time,unit,role,firmware,load,light\n${lines((at, unit, _, i) => `${at},${unit},${i % 700 < 350 ? 'active' : 'standby'},6.${i > 900 ? 4 : 2}.1,${30 + (i % 9) / 4},steady`)}`,
    {},
  ],
  wide: [
    `time,RO1-A.role,RO1-B.role,RO1-A.firmware,RO1-B.load\n${lines((at, _u, _m, i) => `${at},${i < 700 ? 'active,standby' : 'standby,active'},6.${i > 900 ? 4 : 2}.1,${20 + (i % 5)}`, 2400)}`,
    {},
  ],
};

describe('a file that is followed', () => {
  // By turns in a poll and in a journal, and the journal by turns in both lanes.
  for (const [place, [oddity, odd]] of Object.entries(oddities).entries())
    test(`gives what its whole lines give, with ${oddity}`, async () => {
      const random = seeded(oddity.length);
      const often = (row: string, index: number): string => odd(row, index % 240);
      if (place % 2 === 0) await feed(utf8(poll(iso, ',', often, 380)), random);
      else await feed(utf8(journal(iso, ';', often, 340)), random, { isGeneralOnly: place % 4 === 1 });
    }, 60_000);

  for (const [name, [text, told]] of Object.entries(layouts))
    test(
      `gives it of ${name}`,
      () => feed(utf8(text), seeded(name.length), { ...told, isRead: true }, 'a.log'),
      60_000,
    );

  test('gives it in UTF-16 of either end, with a mark and without, and in Windows-1252', async () => {
    const random = seeded(2);
    const text = poll(iso, '\t', oddities['wide characters'] ?? plain, 150);
    await feed(utf16(text, 'le'), random, { wide: 'le' });
    await feed(utf16(text, 'be', false), random, { wide: 'be' });
    const bytes = utf8(poll(iso, ',', plain, 300));
    await feed(
      bytes.map((byte, index) => (index % 211 === 100 && byte > 96 ? 0xe4 : byte)),
      random,
    );
    // The head is ASCII: that it is no UTF-8 shows late, and later still that some of it is.
    const late = bytes.map((byte, index) =>
      index > 68_000 && index % 211 === 100 && byte > 96 ? 0xe4 : byte,
    );
    await feed(late, random);
    late.set(utf8('ä'), bytes.length - 30);
    await feed(late, random);
  }, 60_000);

  test('gives it where the order of day and month is settled late, or not at all', async () => {
    const day = (n: number) => (s: number) => `0${n}/0${n === 3 ? 3 : 4}/2026 ${clock(s).slice(11, 19)}`;
    const random = seeded(3);
    for (const first of [3, 5]) {
      const before = poll(day(first), ';', plain, 300);
      await feed(utf8(before), random);
      const after = poll((s) => european(s + 86_400), ';', plain, 60)
        .split('\n')
        .slice(1)
        .join('\n');
      await feed(utf8(before + after), random);
    }
  }, 60_000);

  test('gives it where names turn out to be none, and where one turns out to be one', async () => {
    const random = seeded(4);
    const text = poll(iso, ',', (row, i) => row.replace('RO2-A', i > 900 ? 'Weir' : 'RO2-A'), 320);
    await feed(utf8(text), random);
    await feed(utf8(text.replaceAll('RO2-A', 'Weir')), random);
    const half = text.replaceAll('RO2-A', 'Weir').replaceAll('Weir,humour', 'Weir,light');
    await feed(utf8(`${half}${iso(9000)},Weir-A,light,steady\n`), random, { cuts: [half.length + 20] });
  }, 60_000);

  test('gives it where rows come late and the clock is set back, once the rest is long', async () => {
    const random = seeded(5);
    for (const stretch of [{ late: 0.03 }, { setBack: 400 }, { late: 0.02, setBack: 90, change: 0.1 }]) {
      const text = longPoll(
        utc,
        [
          { ...calm, cycles: 120 },
          { ...calm, cycles: 200, ...stretch },
        ],
        3,
        random,
      );
      await feed(utf8(text), random);
    }
  }, 60_000);

  test('is delivered once, but for the start that tells what it is', async () => {
    // Its head twice, to tell what it is and what order its dates have, and once for what a stored timeline would say.
    const most = 4 * 65_536;
    const text = longPoll(utc, [{ ...calm, cycles: 2400 }], 8, seeded(6));
    const log = lines((at, unit, message) => `${at} ${unit} ${message}, as ever`, 40_000);
    for (const [long, name] of [
      [text, 'poll.csv'],
      [log, 'a.log'],
    ] as const) {
      expect(long.length).toBeGreaterThan(6 * most);
      expect(await feed(utf8(long), seeded(7), {}, name)).toBeLessThan(most);
    }
  }, 120_000);
});
