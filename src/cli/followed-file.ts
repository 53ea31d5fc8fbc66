import { type FileHandle, open } from 'node:fs/promises';
import { type GrowingFile, InputError } from '../pipeline.ts';
import type { FoundFile } from './folder-files.ts';
import { identityOf } from './identity.ts';
import { piecesOf } from './node-files.ts';
import { refuse } from './system-refusal.ts';

/** One file that is followed, wherever it lies by now: what is written to its end belongs to it, what takes its place does not. */
export interface FollowedFile {
  readonly source: GrowingFile;
  /** Where it lies, or lay last. */
  path: string;
  name: string;
  identity: string;
  bytes: number;
  modified: bigint;
  life: GrowingFile['life'];
  replacedBy: FollowedFile | null;
  /** By this it is read on after it was renamed to where nobody looks, or removed. */
  handle: FileHandle | null;
  /** It lies at none of the paths that are looked at. */
  isElsewhere: boolean;
  /** Its first bytes, and those before its end: a file that continues it has both. */
  start: Uint8Array;
  end: Uint8Array;
  /** When it was seen to grow or to move last, in milliseconds of the computer's clock. */
  changedAt: number;
}

/** So many bytes tell whether a file goes on with what was read. Chosen here. */
const tellingBytes = 256;

/** A file that was found and not known before. Throws InputError where it cannot be read. */
export async function newFollowed(found: FoundFile): Promise<FollowedFile> {
  const { name, bytes, identity, modified } = found;
  const { start, end } = await tellingOf(name, bytes);
  const file: FollowedFile = {
    source: sourceOf(name, () => file),
    path: name,
    name,
    identity,
    bytes,
    modified,
    life: 'grows',
    replacedBy: null,
    handle: null,
    isElsewhere: false,
    start,
    end,
    changedAt: Number.NEGATIVE_INFINITY,
  };
  return file;
}

function sourceOf(readAs: string, file: () => FollowedFile): GrowingFile {
  const source: GrowingFile = {
    readAs,
    get name() {
      return file().name;
    },
    get bytes() {
      return file().bytes;
    },
    get life() {
      return file().life;
    },
    get replacedBy() {
      return file().replacedBy?.source ?? null;
    },
    open: () => source.openFrom(0),
    openFrom: (offset) => openFrom(file(), offset),
    slice: (from, to) => slice(file(), from, Math.min(to, file().bytes)),
  };
  return source;
}

/** Its bytes up to where it was looked at last: what was written since is not known to be its own. */
async function* openFrom(file: FollowedFile, offset: number): AsyncGenerator<Uint8Array> {
  const to = file.bytes;
  if (offset >= to) return;
  const { handle, close } = await handleOf(file);
  try {
    let at = offset;
    for await (const piece of piecesOf(file.name, handle, offset, to - offset)) {
      const part = piece.subarray(0, to - at);
      at += part.length;
      yield part;
      if (at >= to) return;
    }
    throw changed(file.name);
  } finally {
    await close();
  }
}

async function slice(file: FollowedFile, from: number, to: number): Promise<Uint8Array> {
  const { handle, close } = await handleOf(file);
  try {
    return await readAt(handle, from, to);
  } catch (error) {
    return refuse(file.name, error);
  } finally {
    await close();
  }
}

function changed(name: string): InputError {
  return new InputError(name, 'it changed while it was read.', 'It is tried again.');
}

/** Its own handle, or one of its path. Throws InputError where another file lies there by now. */
async function handleOf(
  file: FollowedFile,
): Promise<{ readonly handle: FileHandle; readonly close: () => Promise<void> }> {
  const { handle: own, name, path, identity, bytes } = file;
  if (file.life === 'gone') throw changed(name);
  if (own !== null) return { handle: own, close: () => Promise.resolve() };
  const handle = await open(path).catch((error: unknown) => refuse(name, error));
  const found = await handle.stat({ bigint: true });
  if (identityOf(found) === identity && Number(found.size) >= bytes)
    return { handle, close: () => handle.close() };
  await handle.close();
  throw changed(name);
}

async function readAt(handle: FileHandle, from: number, to: number): Promise<Uint8Array> {
  const { buffer, bytesRead } = await handle.read(new Uint8Array(to - from), 0, to - from, from);
  return buffer.subarray(0, bytesRead);
}

/** What tells a file of which so many bytes were read: its first, and those before that place. */
interface Telling {
  readonly start: Uint8Array;
  readonly end: Uint8Array;
}

async function tellingOf(path: string, bytes: number): Promise<Telling> {
  const handle = await open(path).catch((error: unknown) => refuse(path, error));
  try {
    return await tellingIn(handle, bytes);
  } catch (error) {
    return refuse(path, error);
  } finally {
    await handle.close();
  }
}

async function tellingIn(handle: FileHandle, bytes: number): Promise<Telling> {
  const start = await readAt(handle, 0, Math.min(bytes, tellingBytes));
  return { start, end: await readAt(handle, Math.max(0, bytes - tellingBytes), bytes) };
}

/** True if what lies at a path is that file, as it was or longer. Throws InputError where it cannot be read. */
export async function continues(file: FollowedFile, found: FoundFile): Promise<boolean> {
  if (found.bytes < file.bytes) return false;
  if (found.identity === file.identity && found.bytes === file.bytes && found.modified === file.modified)
    return true;
  const { start, end } = await tellingOf(found.name, file.bytes);
  return isSame(start, file.start) && isSame(end, file.end);
}

function isSame(one: Uint8Array, other: Uint8Array): boolean {
  return one.length === other.length && one.every((byte, at) => byte === other[at]);
}

/** Goes on with a file as it was found. Throws InputError where it cannot be read. */
export async function goOnWith(file: FollowedFile, found: FoundFile, now: number): Promise<void> {
  const { name, bytes, identity, modified } = found;
  if (bytes !== file.bytes || modified !== file.modified) {
    Object.assign(file, await tellingOf(name, bytes));
    file.changedAt = now;
  }
  if (identity !== file.identity) await letGo(file);
  Object.assign(file, {
    path: name,
    name,
    bytes,
    identity,
    modified,
    life: 'grows',
    isElsewhere: false,
    replacedBy: null,
  });
}

/** Goes on by its handle with a file that lies where nobody looks. False where that is over, and all that was read is all there is. */
export async function goOnElsewhere(file: FollowedFile, now: number): Promise<boolean> {
  const { handle } = file;
  if (handle === null) return false;
  try {
    const found = await handle.stat({ bigint: true });
    const bytes = Number(found.size);
    if (bytes < file.bytes) return false;
    if (bytes > file.bytes) Object.assign(file, await tellingIn(handle, bytes), { bytes, changedAt: now });
    return true;
  } catch {
    // Its share is away, or it was removed there: the handle is of no use any more.
    await letGo(file);
    return false;
  }
}

/** True for a file that lies nowhere any more, as far as can be told. */
export async function isRemoved({ handle }: FollowedFile): Promise<boolean> {
  const found = await handle?.stat({ bigint: true }).catch(() => null);
  return found === undefined || found === null || found.nlink === 0n;
}

/** Keeps the file open, so that it can be read on wherever it is moved to. */
export async function hold(file: FollowedFile): Promise<void> {
  if (file.handle !== null || file.life !== 'grows') return;
  const handle = await open(file.path).catch(() => null);
  if (handle === null) return;
  const found = await handle.stat({ bigint: true }).catch(() => null);
  if (found !== null && identityOf(found) === file.identity) file.handle = handle;
  else await handle.close();
}

export async function letGo(file: FollowedFile): Promise<void> {
  const { handle } = file;
  file.handle = null;
  // One whose share is away cannot be closed properly, and need not be.
  await handle?.close().catch(() => undefined);
}
