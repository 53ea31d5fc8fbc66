import { createSHA256 } from 'hash-wasm';
import type { Hasher } from '../src/pipeline.ts';

/** SHA-256 chunk by chunk: the browser's own wants all bytes at once, and is missing on some pages opened from disk. */
export function hasher(): Hasher {
  const made = createSHA256();
  return {
    async update(bytes) {
      (await made).update(bytes);
    },
    digest: async () => (await made).digest('hex'),
  };
}
