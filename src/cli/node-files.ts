import { mkdir, open, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, isAbsolute, join, relative, sep } from 'node:path';
import { glob } from 'tinyglobby';
import { InputError, isNoLog, type StoredFile } from '../pipeline.ts';

/** What is fastest to read and to scan. */
const pieceBytes = 1_048_576;

/** What the arguments name: files to read, and paths that nothing can be read from. */
export interface Found {
  readonly files: readonly StoredFile[];
  readonly failures: readonly InputError[];
}

/**
 * The files that the arguments name: files as they are, of a folder or a pattern with `*` all that may be logs, in the
 * order of their names. A path that is not there, or holds no logs, is a failure that does not stop the others.
 */
export async function findFiles(paths: readonly string[]): Promise<Found> {
  const found = await Promise.all(paths.map((path) => filesAt(path).catch(asFailure)));
  return {
    files: found.flatMap((f) => (f instanceof InputError ? [] : f)),
    failures: found.filter((f) => f instanceof InputError),
  };
}

function asFailure(error: unknown): InputError {
  if (error instanceof InputError) return error;
  throw error;
}

async function filesAt(path: string): Promise<readonly StoredFile[]> {
  const found = await stat(path).catch((error: unknown) => (isPattern(path) ? null : refuse(path, error)));
  if (found === null) return logsAmong(await matching(path), path, 'no log fits the pattern.');
  if (!found.isDirectory()) return [storedFile(path, found.size)];
  const entries = await readdir(path, { recursive: true, withFileTypes: true }).catch((error: unknown) =>
    refuse(path, error),
  );
  const names = entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((name) => !isNoLog(relative(path, name)));
  return logsAmong(names, path, 'the folder holds no logs.');
}

/** Not every shell spells patterns out. */
function isPattern(path: string): boolean {
  return /[*?[{]/.test(path);
}

async function matching(pattern: string): Promise<readonly string[]> {
  const names = await glob(sep === '/' ? pattern : pattern.replaceAll(sep, '/'), {
    absolute: isAbsolute(pattern),
    expandDirectories: false,
  });
  return names.filter((name) => !isNoLog(name.replace(/^(\.\.?\/)+/, '')));
}

async function logsAmong(
  names: readonly string[],
  path: string,
  none: string,
): Promise<readonly StoredFile[]> {
  if (names.length === 0) throw new InputError(path, none, 'Name the files, or another folder.');
  return Promise.all([...names].sort().map(async (name) => storedFile(name, (await stat(name)).size)));
}

function storedFile(name: string, bytes: number): StoredFile {
  return { name, bytes, open: () => openFile(name), slice: (from, to) => readSlice(name, from, to) };
}

async function readSlice(name: string, from: number, to: number): Promise<Uint8Array> {
  const file = await open(name).catch((error: unknown) => refuse(name, error));
  try {
    const { buffer, bytesRead } = await file.read(new Uint8Array(to - from), 0, to - from, from);
    return buffer.subarray(0, bytesRead);
  } catch (error) {
    return refuse(name, error);
  } finally {
    await file.close();
  }
}

/** Reads ahead into one of three chunks of shared memory while the two before are worked on. */
async function* openFile(name: string): AsyncGenerator<Uint8Array> {
  const file = await open(name).catch((error: unknown) => refuse(name, error));
  const read = (into: Uint8Array): Promise<Uint8Array> => {
    const done = file.read(into, 0, into.length, null).then(({ bytesRead }) => into.subarray(0, bytesRead));
    // What goes wrong while the chunk before is worked on is told when this one is asked for.
    done.catch(() => undefined);
    return done;
  };
  const memory = Array.from({ length: 3 }, () => new SharedArrayBuffer(pieceBytes));
  const next = (): Uint8Array => {
    const [first = new SharedArrayBuffer(pieceBytes)] = memory.splice(0, 1);
    memory.push(first);
    return new Uint8Array(first);
  };
  let reading = read(next());
  try {
    for (let chunk = await reading; chunk.length > 0; chunk = await reading) {
      reading = read(next());
      yield chunk;
    }
  } catch (error) {
    refuse(name, error);
  } finally {
    await Promise.allSettled([reading]);
    await file.close();
  }
}

const reasons: Readonly<Record<string, readonly [string, string]>> = {
  ENOENT: ['there is no such file or folder.', 'Check the name.'],
  EACCES: ['it may not be read: no permission.', 'Ask for the permission, or copy it.'],
  EPERM: ['it may not be read: no permission.', 'Ask for the permission, or copy it.'],
  EISDIR: ['it is a folder.', 'Name a file.'],
  ENOTDIR: ['part of its path is no folder.', 'Check the name.'],
  ENOSPC: ['the disk is full.', 'Make room and try again.'],
  EDQUOT: ['your share of the disk is full.', 'Make room and try again.'],
  EFBIG: ['it would be larger than the system allows.', 'Choose another place.'],
  EIO: ['the disk fails.', 'Copy it to another disk and try again.'],
  ESTALE: ['it went away while it was read.', 'Try again.'],
  EMFILE: ['the system allows no more open files.', 'Close other programs and try again.'],
  EROFS: ['the disk can not be written to.', 'Choose another place.'],
};

/** Turns what the system refused into a line for the user; anything else is a defect and goes on. */
function refuse(where: string, error: unknown): never {
  if (!(error instanceof Error && 'code' in error && 'syscall' in error)) throw error;
  const [what, fix] = reasons[String(error.code)] ?? [`the system refuses it (${error.code}).`, 'Try again.'];
  throw new InputError(where, what, fix);
}

/** Reads a small text file, such as a phrasebook. Throws InputError if it can not. */
export async function readText(path: string): Promise<string> {
  return readFile(path, 'utf8').catch((error: unknown) => refuse(path, error));
}

/** Writes a file that is not there yet. Throws InputError if it is, or if it can not be written. */
export async function writeNew(path: string, text: string): Promise<void> {
  const isThere = await stat(path).then(
    () => true,
    () => false,
  );
  if (isThere) throw new InputError(path, 'there is a file of that name.', 'Name another, or move it away.');
  await writeWhole(path, text);
}

/** Writes a file whole or not at all: aside first, then renamed. Throws InputError if it can not. */
export async function writeWhole(
  path: string,
  content: string | Uint8Array | Iterable<string>,
): Promise<void> {
  const aside = `${path}.part`;
  try {
    await mkdir(dirname(path), { recursive: true });
    await writeFile(aside, content);
    await rename(aside, path);
  } catch (error) {
    await rm(aside, { force: true }).catch(() => undefined);
    refuse(path, error);
  }
}
