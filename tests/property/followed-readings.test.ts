/** A file that is followed as it grows must give at any moment what reading its whole lines at once gives. */
import { afterAll, describe, expect, test } from 'vitest';
import { type Random, seeded } from '../../samples/random.ts';
import { platform } from '../../src/cli/platform.ts';
import type { ImportOptions } from '../../src/import/import-options.ts';
import { readPhrasebook } from '../../src/import/read-phrasebook.ts';
import { readSource } from '../../src/import/read-source.ts';
import { followedReadings } from '../../src/pipeline.ts';
import { grownFile } from '../support/growing-file.ts';
import { calm, longPoll } from '../support/long-polls.ts';
import { clock, journal, oddities, plain, poll, stamps } from '../support/odd-polls.ts';
import { sourceOf, type TextOptions } from '../support/read-text.ts';

const tried = { files: 0, cuts: 0, inLines: 0 };
afterAll(() => {
  console.log(
    `followed: ${tried.files} files alike at ${tried.cuts} cuts, ${tried.inLines} of them in the midst of a line`,
  );
});

const { plain: iso = clock, european = clock, utc = clock } = stamps;

function optionsOf(options: TextOptions): ImportOptions {
  return {
    phrasebook: readPhrasebook('phrasebook.yaml', options.phrasebook ?? null),
    zone: options.zone ?? 'Europe/Lisbon',
    order: options.order ?? null,
    year: options.year ?? null,
    neighbour: options.neighbour ?? null,
    sha256: platform.sha256,
    isGeneralOnly: options.isGeneralOnly ?? false,
  };
}

async function answer(read: () => Promise<unknown>): Promise<unknown> {
  try {
    return await read();
  } catch (error) {
    return String(error);
  }
}

/** Where the last whole line ends, looked for in another way than the program does: text up to the cut, back to its last line end. */
function wholeLines(bytes: Uint8Array, to: number, wide: 'le' | 'be' | null): number {
  if (wide === null) {
    let at = to;
    while (at > 0 && bytes[at - 1] !== 10) at -= 1;
    return at;
  }
  for (let at = to - (to % 2); at >= 2; at -= 2) {
    const [low, high] = wide === 'le' ? [bytes[at - 2], bytes[at - 1]] : [bytes[at - 1], bytes[at - 2]];
    if (low === 10 && high === 0) return at;
  }
  return 0;
}

interface Told extends TextOptions {
  readonly wide?: 'le' | 'be';
  /** Cuts at these places besides random ones. */
  readonly cuts?: readonly number[];
}

/** Feeds a file in random cuts, compares at each, and gives how many bytes were delivered beyond its length. */
async function compare(
  bytes: Uint8Array,
  random: Random,
  told: Told = {},
  name = 'poll.csv',
): Promise<number> {
  const file = grownFile(name, bytes, 20_011);
  const kept = followedReadings();
  const options = optionsOf(told);
  const own = [0.2, 0.75, 0.85, 0.95].map((from) => Math.floor(bytes.length * (from + random() * 0.05)));
  const cuts = [...own, ...(told.cuts ?? []), bytes.length - 1, bytes.length].sort((a, b) => a - b);
  tried.files += 1;
  for (const cut of cuts) {
    file.now.bytes = cut;
    const to = wholeLines(bytes, cut, told.wide ?? null);
    tried.cuts += 1;
    if (to < cut) tried.inLines += 1;
    const whole = await answer(() => readSource(sourceOf(name, bytes.subarray(0, to)), options));
    expect(await answer(() => kept.read(file.source, options)), `at ${cut} of ${bytes.length}`).toEqual(
      whole,
    );
    const delivered = file.delivered();
    expect(await answer(() => kept.read(file.source, options))).toEqual(whole);
    if (typeof whole === 'object') expect(file.delivered()).toBe(delivered);
  }
  file.now.life = 'ended';
  const whole = await answer(() => readSource(sourceOf(name, bytes), options));
  expect(await answer(() => kept.read(file.source, options)), 'at the end').toEqual(whole);
  return file.delivered() - bytes.length;
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

function utf16(text: string, wide: 'le' | 'be', mark = true): Uint8Array {
  const units = mark ? `\uFEFF${text}` : text;
  const bytes = new Uint8Array(units.length * 2);
  const view = new DataView(bytes.buffer);
  for (let at = 0; at < units.length; at += 1) view.setUint16(at * 2, units.charCodeAt(at), wide === 'le');
  return bytes;
}

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
  for (const [oddity, odd] of Object.entries(oddities))
    test(`gives what its whole lines give, with ${oddity}`, async () => {
      const random = seeded(oddity.length);
      const often = (row: string, index: number): string => odd(row, index % 240);
      await compare(utf8(poll(iso, ',', often, 300)), random);
      await compare(utf8(journal(iso, ';', often, 300)), random, { isGeneralOnly: random() < 0.5 });
    }, 60_000);

  for (const [name, [text, told]] of Object.entries(layouts))
    test(`gives it of ${name}`, () => compare(utf8(text), seeded(name.length), told, 'a.log'), 60_000);

  test('gives it in UTF-16 of either end, with a mark and without, and in Windows-1252', async () => {
    const random = seeded(2);
    const text = poll(iso, '\t', oddities['wide characters'] ?? plain, 150);
    await compare(utf16(text, 'le'), random, { wide: 'le' });
    await compare(utf16(text, 'be', false), random, { wide: 'be' });
    const bytes = utf8(poll(iso, ',', plain, 300));
    await compare(
      bytes.map((byte, index) => (index % 211 === 100 && byte > 96 ? 0xe4 : byte)),
      random,
    );
    // The head is ASCII: that it is no UTF-8 shows late, and later still that some of it is.
    const late = bytes.map((byte, index) =>
      index > 68_000 && index % 211 === 100 && byte > 96 ? 0xe4 : byte,
    );
    await compare(late, random);
    late.set(utf8('ä'), bytes.length - 30);
    await compare(late, random);
  }, 60_000);

  test('gives it where the order of day and month is settled late, or not at all', async () => {
    const day = (n: number) => (s: number) => `0${n}/0${n === 3 ? 3 : 4}/2026 ${clock(s).slice(11, 19)}`;
    const random = seeded(3);
    for (const first of [3, 5]) {
      const before = poll(day(first), ';', plain, 300);
      await compare(utf8(before), random);
      const after = poll((s) => european(s + 86_400), ';', plain, 60)
        .split('\n')
        .slice(1)
        .join('\n');
      await compare(utf8(before + after), random);
    }
  }, 60_000);

  test('gives it where names turn out to be none, and where one turns out to be one', async () => {
    const random = seeded(4);
    const text = poll(iso, ',', (row, i) => row.replace('RO2-A', i > 900 ? 'Weir' : 'RO2-A'), 320);
    await compare(utf8(text), random);
    await compare(utf8(text.replaceAll('RO2-A', 'Weir')), random);
    const half = text.replaceAll('RO2-A', 'Weir').replaceAll('Weir,humour', 'Weir,light');
    await compare(utf8(`${half}${iso(9000)},Weir-A,light,steady\n`), random, { cuts: [half.length + 20] });
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
      await compare(utf8(text), random);
    }
  }, 60_000);

  test('is delivered once, but for the start that tells what it is', async () => {
    const most = 4 * 65_536;
    const text = longPoll(utc, [{ ...calm, cycles: 900 }], 8, seeded(6));
    expect(text.length).toBeGreaterThan(10 * most);
    expect(await compare(utf8(text), seeded(7))).toBeLessThan(most);
    const log = lines((at, unit, message) => `${at} ${unit} ${message}, as ever`, 60_000);
    expect(log.length).toBeGreaterThan(10 * most);
    expect(await compare(utf8(log), seeded(8), {}, 'a.log')).toBeLessThan(most);
  }, 120_000);
});
