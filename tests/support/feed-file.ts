import { expect } from 'vitest';
import type { Random } from '../../samples/random.ts';
import { platform } from '../../src/cli/platform.ts';
import type { ImportOptions } from '../../src/import/import-options.ts';
import { readPhrasebook } from '../../src/import/read-phrasebook.ts';
import { readSource } from '../../src/import/read-source.ts';
import { followedReadings } from '../../src/pipeline.ts';
import { comparable } from './comparable.ts';
import { grownFile } from './growing-file.ts';
import { sourceOf, type TextOptions } from './read-text.ts';

/** What was compared so far. */
export const fed = { files: 0, cuts: 0, inLines: 0 };

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
    return comparable(await read());
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

/** How a file is fed. */
export interface Told extends TextOptions {
  readonly wide?: 'le' | 'be';
  /** Cuts at these places besides random ones. */
  readonly cuts?: readonly number[];
  /** It is one that can be read: a refusal would compare nothing. */
  readonly isRead?: boolean;
}

/**
 * Feeds a file in random cuts, expects at each what a whole reading of its whole lines gives, and gives how many bytes were delivered
 * beyond its length.
 */
export async function feed(
  bytes: Uint8Array,
  random: Random,
  told: Told = {},
  name = 'poll.csv',
): Promise<number> {
  const file = grownFile(name, bytes, 20_011);
  const kept = followedReadings();
  const options = optionsOf(told);
  const own = [0.2, 0.72, 0.85].map((from) => Math.floor(bytes.length * (from + random() * 0.05)));
  const cuts = [...own, ...(told.cuts ?? []), bytes.length - 1, bytes.length].sort((a, b) => a - b);
  fed.files += 1;
  for (const cut of cuts) {
    file.now.bytes = cut;
    const to = wholeLines(bytes, cut, told.wide ?? null);
    fed.cuts += 1;
    if (to < cut) fed.inLines += 1;
    const whole = await answer(() => readSource(sourceOf(name, bytes.subarray(0, to)), options));
    if (told.isRead === true) expect(whole).toBeTypeOf('object');
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

/** A text in UTF-16, with a byte order mark or without. */
export function utf16(text: string, wide: 'le' | 'be', mark = true): Uint8Array {
  const units = mark ? `\uFEFF${text}` : text;
  const bytes = new Uint8Array(units.length * 2);
  const view = new DataView(bytes.buffer);
  for (let at = 0; at < units.length; at += 1) view.setUint16(at * 2, units.charCodeAt(at), wide === 'le');
  return bytes;
}
