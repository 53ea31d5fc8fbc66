import { expect } from 'vitest';
import { comparable } from './comparable.ts';
import { readText, type TextOptions } from './read-text.ts';

/** What was compared so far. */
export const tried = { files: 0, chunks: new Set<number>(), seams: 0 };

/** Expects that the fast lane comes to what the general one comes to, in chunks of such sizes. */
export async function compare(text: string | Uint8Array, ...chunks: readonly number[]): Promise<void> {
  await compareWith({}, text, ...chunks);
}

/** The same of a file that is read with options of its own. */
export async function compareWith(
  options: TextOptions,
  text: string | Uint8Array,
  ...chunks: readonly number[]
): Promise<void> {
  const read = async (chunk: number, isGeneralOnly: boolean): Promise<unknown> => {
    try {
      const asked = { zone: 'Europe/Lisbon', ...options, chunk, isGeneralOnly };
      return comparable(await readText('poll.csv', text, asked));
    } catch (error) {
      return String(error);
    }
  };
  const general = await read(65_536, true);
  // With a phrasebook a refusal would compare nothing.
  if (options.phrasebook !== undefined) expect(general).toBeTypeOf('object');
  tried.files += 1;
  for (const chunk of chunks) {
    tried.chunks.add(chunk);
    tried.seams += Math.ceil(text.length / chunk) - 1;
    expect(await read(chunk, false)).toEqual(general);
  }
}
