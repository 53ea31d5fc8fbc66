import type { FileSource } from './file-source.ts';

/** The bytes of a file end before their time: what came before can be used. */
export class DamagedEnd extends Error {}

/**
 * Hands on the bytes of a file chunk by chunk, until `take` gives `false`. Gives what is wrong with the file where its
 * bytes end too early, `null` where nothing is.
 */
export async function eachChunk(
  source: FileSource,
  take: (chunk: Uint8Array) => boolean | Promise<boolean>,
): Promise<string | null> {
  try {
    for await (const chunk of source.open()) if (!(await take(chunk))) return null;
    return null;
  } catch (error) {
    if (error instanceof DamagedEnd) return error.message;
    throw error;
  }
}
