import { fstatSync } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import { type FileSource, InputError, type StoredFile } from '../pipeline.ts';
import type { FoundFile } from './folder-files.ts';
import { identityOf } from './identity.ts';
import { piecesOf } from './node-files.ts';
import { refuse } from './system-refusal.ts';

/** So many bytes at both ends of each piece show that a file was overwritten. Chosen here. */
const sampleBytes = 256;

/** What was read of a file, by place: a file that only grew still holds it there. */
type Samples = Map<number, Uint8Array>;

/** A file on the disk, and how it was found: another thread can read it as this one would. */
export interface FileOnDisk extends StoredFile {
  readonly found: FoundFile;
}

/**
 * A file as it was found: each pass over it gives the bytes up to the end that it had then, no matter what is appended meanwhile.
 * Throws InputError where it was removed, replaced, shortened or overwritten since: what was read would be of two files.
 */
export function storedFile(found: FoundFile): FileOnDisk {
  const samples: Samples = new Map();
  return {
    name: found.name,
    bytes: found.bytes,
    found,
    open: () => openAsFound(found, samples),
    slice: (from, to) => readSlice(found, samples, from, to),
  };
}

/** True if a file can be read by another thread. */
export function isFileOnDisk(source: FileSource): source is FileOnDisk {
  return 'found' in source && source.container === undefined;
}

async function* openAsFound(found: FoundFile, samples: Samples): AsyncGenerator<Uint8Array> {
  const { name, bytes } = found;
  const file = await handleOf(found, samples);
  try {
    let at = 0;
    for await (const piece of piecesOf(name, file, 0, bytes)) {
      // A system may give a file without a size, such as those of its own state.
      const part = bytes === 0 ? piece : piece.subarray(0, bytes - at);
      noteSamples(samples, part, at);
      at += part.length;
      yield part;
      if (at === bytes) break;
    }
    await checkUnchanged(file, found, samples);
    // It ended early and is long again, and no sample differs: it was written anew after what was read.
    if (at < bytes) throw changed(name, 'was overwritten');
  } finally {
    await file.close();
  }
}

async function readSlice(found: FoundFile, samples: Samples, from: number, to: number): Promise<Uint8Array> {
  const file = await handleOf(found, samples);
  try {
    return await readAt(file, from, to - from);
  } catch (error) {
    return refuse(found.name, error);
  } finally {
    await file.close();
  }
}

async function readAt(file: FileHandle, from: number, length: number): Promise<Uint8Array> {
  const { buffer, bytesRead } = await file.read(new Uint8Array(length), 0, length, from);
  return buffer.subarray(0, bytesRead);
}

/** Opens the file that was found. Throws InputError where it is not that file any more. */
async function handleOf(found: FoundFile, samples: Samples): Promise<FileHandle> {
  const { name } = found;
  const file = await open(name).catch((error: unknown) => {
    // It was there when it was found.
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT')
      throw changed(name, 'was removed or renamed');
    return refuse(name, error);
  });
  try {
    await checkUnchanged(file, found, samples);
    return file;
  } catch (error) {
    await file.close();
    throw error;
  }
}

async function checkUnchanged(file: FileHandle, found: FoundFile, samples: Samples): Promise<void> {
  const { name, bytes, identity, modified } = found;
  // Not by the handle: a turn of the event loop for each of thousands of files takes longer.
  const now = fstatSync(file.fd, { bigint: true });
  if (identityOf(now) !== identity) throw changed(name, 'was replaced by another file');
  if (now.size < bytes) throw changed(name, 'became shorter');
  if (now.mtimeNs === modified) return;
  for (const [at, sample] of samples)
    if (Buffer.compare(await readAt(file, at, sample.length), sample) !== 0)
      throw changed(name, 'was overwritten');
}

/** What an earlier pass found stays: this one must find the same. */
function noteSamples(samples: Samples, part: Uint8Array, at: number): void {
  const last = Math.max(0, part.length - sampleBytes);
  if (!samples.has(at)) samples.set(at, part.slice(0, sampleBytes));
  if (!samples.has(at + last)) samples.set(at + last, part.slice(last));
}

function changed(name: string, how: string): InputError {
  return new InputError(name, `it ${how} while it was read.`, 'Run the command again, or read a copy.');
}
