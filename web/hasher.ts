import { createSHA256 } from 'hash-wasm';
import type { Hasher } from '../src/pipeline.ts';

/** A hasher that may run in a worker of its own, which ends with it: at its digest, or when it is closed. */
export interface ClosingHasher extends Hasher {
  close(): void;
}

/** SHA-256 chunk by chunk: the browser's own wants all bytes at once, and is missing on some pages opened from disk. */
export function hasher(): ClosingHasher {
  const made = createSHA256();
  return {
    async update(bytes) {
      (await made).update(bytes);
    },
    digest: async () => (await made).digest('hex'),
    async digestSoFar() {
      const hash = await made;
      const state = hash.save();
      const digest = hash.digest('hex');
      hash.init().load(state);
      return digest;
    },
    close: () => undefined,
  };
}

/** SHA-256 of bytes that are in memory, in lower-case hexadecimal. */
export async function digester(): Promise<(bytes: Uint8Array) => string> {
  const made = await createSHA256();
  return (bytes) => made.init().update(bytes).digest('hex');
}
