import { InputError, type Platform, type StoredFile } from '../src/pipeline.ts';
import { gunzip } from './gunzip.ts';
import { hashBeside } from './hash-beside.ts';
import { type ClosingHasher, hasher } from './hasher.ts';
import { type LineIndex, noteEnds } from './line-index.ts';
import type { NamedFile } from './protocol.ts';

/** Bytes that can be read at any place; how many are asked for at a time is the caller's choice. */
export interface Bytes {
  readonly size: number;
  slice(from: number, to: number): Promise<Uint8Array>;
}

const chunkBytes = 2_097_152;

/** Gives a file as it is at this moment, where the page may ask for it; else `null`. */
export type FileNow = () => Promise<File | null>;

/**
 * A browser's file as bytes. A file that grew since it was given is read on as `fileNow` gives it: its bytes so far are the same.
 * Throws InputError if it vanished, shrank or changed, and cannot be had again.
 */
export function bytesOf({ name, file }: NamedFile, fileNow: FileNow = () => Promise.resolve(null)): Bytes {
  const { size } = file;
  let newest = file;
  const read = async (from: number, to: number): Promise<Uint8Array> =>
    new Uint8Array(await newest.slice(from, to).arrayBuffer());
  return {
    size,
    async slice(from, to) {
      try {
        return await read(from, to).catch(async (error: unknown) => {
          const now = await fileNow();
          if (now === null || now.size < size) throw error;
          newest = now;
          return await read(from, to);
        });
      } catch (error) {
        if (!(error instanceof DOMException)) throw error;
        throw new InputError(
          name,
          'it cannot be read any more: it was moved, changed or deleted since it was chosen.',
          'Choose it again.',
        );
      }
    },
  };
}

/**
 * A browser's file as the import takes it; its line ends are noted in `index` as it is read, and `onBytes` is told how many bytes
 * were read with each piece.
 */
export function sourceOf(
  named: NamedFile,
  index: LineIndex,
  onBytes: (bytes: number) => void,
  fileNow?: FileNow,
): StoredFile {
  const bytes = bytesOf(named, fileNow);
  const slice = async (from: number, to: number): Promise<Uint8Array> => {
    const piece = await bytes.slice(from, to);
    onBytes(piece.length);
    return piece;
  };
  return {
    name: named.name,
    bytes: bytes.size,
    open: () => chunks({ size: bytes.size, slice }, index),
    slice,
  };
}

/** The bytes from `offset` on, chunk by chunk; reads ahead while a chunk is worked on. */
export async function* chunks(bytes: Bytes, index: LineIndex, offset = 0): AsyncGenerator<Uint8Array> {
  const read = (at: number): Promise<Uint8Array> => {
    const done = bytes.slice(at, Math.min(bytes.size, at + chunkBytes));
    // What goes wrong while the chunk before is worked on is told when this one is asked for.
    done.catch(() => undefined);
    return done;
  };
  let reading = read(offset);
  for (let at = offset; at < bytes.size; at += chunkBytes) {
    const chunk = await reading;
    reading = read(at + chunkBytes);
    noteEnds(index, at, chunk);
    yield chunk;
  }
}

/** From so many bytes on the start of a worker is worth it. */
const workerFrom = 16_777_216;

function sha256({ name, bytes }: Parameters<Platform['sha256']>[0]): ClosingHasher {
  return bytes !== null && bytes >= workerFrom ? hashBeside(name) : hasher();
}

/** What the core asks of the browser. */
export const platform = { sha256, gunzip } satisfies Platform;
