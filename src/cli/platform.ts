import { createHash } from 'node:crypto';
import { getHeapStatistics } from 'node:v8';
import { createGunzip, type Gunzip } from 'node:zlib';
import { DamagedEnd, type Hasher, type Platform } from '../pipeline.ts';
import { threadHasher } from './thread-hasher.ts';

const unpackedBytes = 1_048_576;
const packedBytes = 32_768;

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
  };
}

async function* gunzip(packed: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  const unpacker = createGunzip({ chunkSize: unpackedBytes });
  const ready: Uint8Array[] = [];
  // Read as events: a stream that fails drops what was not yet fetched from it.
  unpacker.on('data', (chunk: Uint8Array) => ready.push(chunk));
  let error: Error | null = null;
  unpacker.on('error', (found) => {
    error = found;
  });
  for await (const part of partsOf(packed)) {
    const unpacked = written(unpacker, part);
    // What the part before gave is worked on while this one is unpacked.
    yield* ready.splice(0);
    await unpacked;
    if (error === null) continue;
    yield* ready.splice(0);
    throw new DamagedEnd('The archive is damaged');
  }
  await ended(unpacker);
  yield* ready.splice(0);
  if (error !== null) throw new DamagedEnd('The archive is cut off or damaged');
}

/** Small parts: each may unpack to a thousand times its size. */
async function* partsOf(packed: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  for await (const chunk of packed)
    for (let at = 0; at < chunk.length; at += packedBytes) yield chunk.subarray(at, at + packedBytes);
}

/** Settles once the chunk is unpacked, or can not be: a stream that fails never calls back. */
function written(unpacker: Gunzip, chunk: Uint8Array): Promise<void> {
  return new Promise((resolve) => {
    const settle = (): void => {
      unpacker.off('error', settle);
      resolve();
    };
    unpacker.once('error', settle);
    unpacker.write(chunk, settle);
  });
}

/** Settles once all is unpacked; it may be so already, where other bytes follow the end of the archive. */
function ended(unpacker: Gunzip): Promise<void> {
  return new Promise((resolve) => {
    if (unpacker.readableEnded || unpacker.destroyed) resolve();
    unpacker.once('end', resolve);
    unpacker.once('error', () => resolve());
    unpacker.end();
  });
}
