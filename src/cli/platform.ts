import { createHash } from 'node:crypto';
import { getHeapStatistics } from 'node:v8';
import type { Hasher, Platform } from '../pipeline.ts';
import { gunzip } from './gunzip.ts';
import { threadHasher } from './thread-hasher.ts';

/** What Node gives the core: SHA-256, and gzip with its check sums. */
export const platform: Platform = { sha256, gunzip };

/** The program itself, and the room in which V8 makes new objects, which its limit counts too (three times 16 MiB). */
const ownBytes = 75_497_472;
/**
 * A change takes up to so much of the heap on its way to a report. Measured on 30 November 2026: with a limit of 700 MB timeline, verify
 * and fleet held a million changes of one pair in two files that tell the same, with 400 MB not; in one file they held them with 300 MB.
 */
const bytesEach = 640;

/** So many changes fit a heap of such a limit, in bytes; more would end the program in the middle of its work. */
export function changesIn(heapLimit: number): number {
  return Math.max(0, Math.floor((heapLimit - ownBytes) / bytesEach));
}

export const mostChanges = changesIn(getHeapStatistics().heap_size_limit);

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
