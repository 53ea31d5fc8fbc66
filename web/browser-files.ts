import { Gunzip } from 'fflate';
import { DamagedEnd, type Hasher, InputError, type Platform, type StoredFile } from '../src/pipeline.ts';
import { hashBeside } from './hash-beside.ts';
import { hasher } from './hasher.ts';
import type { NamedFile } from './protocol.ts';

/** Bytes that can be read at any place; how many are asked for at a time is the caller's choice. */
export interface Bytes {
  readonly size: number;
  slice(from: number, to: number): Promise<Uint8Array>;
}

const pieceBytes = 2_097_152;

/** A browser's file as bytes. Throws InputError if it vanished or changed since it was given. */
export function bytesOf({ name, file }: NamedFile): Bytes {
  return {
    size: file.size,
    async slice(from, to) {
      try {
        return new Uint8Array(await file.slice(from, to).arrayBuffer());
      } catch (error) {
        if (!(error instanceof DOMException)) throw error;
        throw new InputError(
          name,
          'it can not be read any more: it was moved, changed or deleted since it was chosen.',
          'Choose it again.',
        );
      }
    },
  };
}

/** A browser's file as the import takes it. */
export function sourceOf(named: NamedFile): StoredFile {
  const bytes = bytesOf(named);
  return { name: named.name, bytes: bytes.size, open: () => chunks(bytes), slice: bytes.slice };
}

/** Reads ahead while a chunk is worked on. */
async function* chunks(bytes: Bytes): AsyncGenerator<Uint8Array> {
  const read = (at: number): Promise<Uint8Array> => {
    const done = bytes.slice(at, Math.min(bytes.size, at + pieceBytes));
    // What goes wrong while the chunk before is worked on is told when this one is asked for.
    done.catch(() => undefined);
    return done;
  };
  let reading = read(0);
  for (let at = 0; at < bytes.size; at += pieceBytes) {
    const chunk = await reading;
    reading = read(at + pieceBytes);
    yield chunk;
  }
}

/** From so many bytes on the start of a worker is worth it. */
const workerFrom = 16_777_216;

function sha256({ name, bytes }: Parameters<Platform['sha256']>[0]): Hasher {
  return bytes !== null && bytes >= workerFrom ? hashBeside(name) : hasher();
}

/** Unpacks gzip, of several members too, which the browser's own unpacker refuses. */
async function* gunzip(packed: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  const ready: Uint8Array[] = [];
  const unpacker = new Gunzip((chunk) => ready.push(chunk));
  const push = (chunk: Uint8Array, isLast: boolean): DamagedEnd | null => {
    try {
      unpacker.push(chunk, isLast);
      return null;
    } catch (error) {
      if (error instanceof Error && 'code' in error)
        return new DamagedEnd('The archive is cut off or damaged');
      throw error;
    }
  };
  for await (const chunk of packed) {
    const damage = push(chunk, false);
    yield* ready.splice(0);
    if (damage !== null) throw damage;
  }
  const damage = push(new Uint8Array(0), true);
  yield* ready.splice(0);
  if (damage !== null) throw damage;
}

/** What the core asks of the browser. */
export const platform: Platform = { sha256, gunzip };
