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
import { journal, oddities, plain, poll, stamps } from '../support/odd-polls.ts';
import { sourceOf, type TextOptions } from '../support/read-text.ts';

const tried = { files: 0, cuts: 0, inLines: 0 };
afterAll(() => {
  console.log(
    `followed: ${tried.files} files alike at ${tried.cuts} cuts, ${tried.inLines} of them in the midst of a line`,
  );
});

const iso = stamps.plain ?? plain;
const european = stamps.european ?? plain;

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
  const own = [0.2, 0.6, 0.7, 0.8, 0.9, 0.95].map((from) =>
    Math.floor(bytes.length * (from + random() * 0.05)),
  );
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

describe('a file that is followed', () => {
  for (const [oddity, odd] of Object.entries(oddities))
    test(`gives what its whole lines give, with ${oddity}`, async () => {
      const random = seeded(oddity.length);
      const often = (row: string, index: number): string => odd(row, index % 240);
      for (const isGeneralOnly of [false, true]) {
        await compare(utf8(poll(iso, ',', often, 420)), random, { isGeneralOnly });
        await compare(utf8(journal(iso, ';', often, 420)), random, { isGeneralOnly });
      }
    }, 60_000);

  test('gives it in UTF-16 of either end, with a mark and without, and in Windows-1252', async () => {
    const random = seeded(2);
    const text = poll(iso, '\t', oddities['wide characters'] ?? plain, 250);
    for (const wide of ['le', 'be'] as const)
      for (const mark of [true, false]) await compare(utf16(text, wide, mark), random, { wide });
    const bytes = utf8(poll(iso, ',', plain, 420));
    const foreign = bytes.map((byte, index) => (index % 211 === 100 && byte > 96 ? 0xe4 : byte));
    await compare(foreign, random);
    // The head is ASCII: that it is no UTF-8 shows late.
    const late = bytes.map((byte, index) =>
      index > 80_000 && index % 211 === 100 && byte > 96 ? 0xe4 : byte,
    );
    await compare(late, random);
  }, 60_000);
});
