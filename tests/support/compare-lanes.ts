import { expect } from 'vitest';
import { readText } from './read-text.ts';

/** What was compared so far. */
export const tried = { files: 0, chunks: new Set<number>(), seams: 0 };

/** Expects that the fast lane comes to what the general one comes to, in chunks of such sizes. */
export async function compare(text: string | Uint8Array, ...chunks: readonly number[]): Promise<void> {
  return compareWith(null, text, ...chunks);
}

/** The same with a phrasebook. */
export async function compareWith(
  phrasebook: string | null,
  text: string | Uint8Array,
  ...chunks: readonly number[]
): Promise<void> {
  const read = async (chunk: number, isGeneralOnly: boolean): Promise<unknown> => {
    try {
      const book = phrasebook === null ? {} : { phrasebook };
      return await readText('poll.csv', text, { chunk, isGeneralOnly, zone: 'Europe/Lisbon', ...book });
    } catch (error) {
      return String(error);
    }
  };
  const general = await read(65_536, true);
  // With a phrasebook a refusal would compare nothing.
  if (phrasebook !== null) expect(general).toBeTypeOf('object');
  tried.files += 1;
  for (const chunk of chunks) {
    tried.chunks.add(chunk);
    tried.seams += Math.ceil(text.length / chunk) - 1;
    expect(await read(chunk, false)).toEqual(general);
  }
}
