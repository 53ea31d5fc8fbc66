import { createHash } from 'node:crypto';
import { getHeapStatistics } from 'node:v8';
import type { Hasher, Platform } from '../pipeline.ts';
import { gunzip } from './gunzip.ts';
import { threadHasher } from './thread-hasher.ts';

/** What Node gives the core: SHA-256, and gzip with its check sums. */
export const platform: Platform = { sha256, gunzip };

/**
 * A change takes some two kilobytes on its way to a report (measured: 260,000 changes of one pair pass through every command
 * with a heap of 560 MB). More would end the program in the middle of its work.
 */
export const mostChanges = Math.floor(getHeapStatistics().heap_size_limit / 2048);

/** SHA-256 of some bytes, in lower-case hexadecimal. */
export function digestOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** From so many bytes on, packed or not, the start of a thread is worth it. */
const threadFrom = 16_777_216;
const threadFromPacked = 2_097_152;

function sha256({ name, bytes, packedBytes }: Parameters<Platform['sha256']>[0]): Hasher {
  if ((bytes ?? 0) >= threadFrom || (packedBytes ?? 0) >= threadFromPacked) return threadHasher(name);
  const hash = createHash('sha256');
  return {
    update: (bytes) => {
      hash.update(bytes);
    },
    digest: () => hash.digest('hex'),
    digestSoFar: () => hash.copy().digest('hex'),
  };
}
