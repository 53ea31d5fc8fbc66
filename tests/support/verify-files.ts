import { type Analysed, analyse, verify } from '../../src/pipeline.ts';
import type { Swap } from '../../src/vocabulary.ts';
import { readStored } from './read-text.ts';

/** What the program says of some files. */
export interface Verified {
  readonly analysed: Analysed;
  readonly swaps: readonly Swap[];
}

/** Reads files in the order given, archives unpacked, and verifies every swap in them; `null`: plain English. */
export async function verifyFiles(
  files: Readonly<Record<string, string | Uint8Array>>,
  phrasebook: string | null,
): Promise<Verified> {
  const stored = Object.entries(files).map(([name, content]) => {
    const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
    return [name, bytes] as const;
  });
  const imported = await readStored(Object.fromEntries(stored), phrasebook === null ? {} : { phrasebook });
  const analysed = analyse(imported);
  return { analysed, swaps: verify(analysed, null, { from: null, to: null }, null).swaps };
}
