import { open, readdir, rename, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { InputError } from '../pipeline.ts';
import { identityOf } from './identity.ts';
import { makeFolder } from './make-folder.ts';
import { newPartName, removeParts, whileWriting } from './parts.ts';
import { refuseWriting } from './system-refusal.ts';
import { lookAt, thingAt } from './things.ts';

/** A document under its name in a folder. */
export interface Report {
  readonly name: string;
  readonly text: string;
}

type Content = string | Uint8Array | Iterable<string>;

/** Files that a command reads, by identity: they are never written to, no matter what name leads to them. */
export type ReadFiles = ReadonlySet<string>;

/** The line where a binary format was asked for and no file named. */
export function parquetIsBinary(): InputError {
  return new InputError(
    '--format parquet',
    'Parquet is binary and cannot be printed.',
    'Name a file with --out.',
  );
}

/** Writes a file that is not there yet. Throws InputError if it is, or if it cannot be written. */
export async function writeNew(path: string, text: string): Promise<void> {
  const file = await makeFolder(dirname(path))
    .then(() => open(path, 'wx'))
    .catch((error: unknown) => refuseWriting(path, error));
  try {
    await whileWriting([path], () => file.writeFile(text));
  } catch (error) {
    refuseWriting(path, error);
  } finally {
    await file.close();
  }
}

/**
 * Writes a file whole or not at all: aside first, then renamed. Throws InputError if it cannot, or if it is one of the files
 * that are read.
 */
export async function writeWhole(path: string, content: Content, read: ReadFiles): Promise<void> {
  await refuseInput(path, read);
  await put(path, content);
}

/**
 * Writes reports into one folder, each whole or not at all; gives their paths. All are written aside before the first is put in its
 * place, so that no folder holds half of two runs. Throws InputError, before the first is written, if one would be written over a file
 * that is read, or over another whose name differs from its own in case only.
 */
export async function writeReports(
  folder: string,
  reports: readonly Report[],
  read: ReadFiles,
): Promise<readonly string[]> {
  const there = await readdir(folder).catch(() => []);
  for (const { name } of reports) {
    const path = join(folder, name);
    await refuseInput(path, read);
    const other = there.find((n) => n !== name && n.toLowerCase() === name.toLowerCase());
    if (other !== undefined)
      throw new InputError(
        path,
        `there is ${other} in that folder, and some disks do not distinguish the two names.`,
        'Name another folder with --out.',
      );
  }
  const places = reports.map(({ name, text }) => ({ path: join(folder, name), text }));
  await putTogether(places);
  return places.map(({ path }) => path);
}

async function refuseInput(path: string, read: ReadFiles): Promise<void> {
  const found = await lookAt(path);
  if (found !== null && read.has(identityOf(found)))
    throw new InputError(path, 'it is one of the files to read.', 'Write to another place.');
}

async function put(path: string, content: Content): Promise<void> {
  try {
    await makeFolder(dirname(path));
    if (await isStream(path)) await writeFile(path, content);
    else await putWhole(path, content);
  } catch (error) {
    refuseWriting(path, error);
  }
}

/** Nothing can be put in the place of a device, or of a pipe that the shell made. */
async function isStream(path: string): Promise<boolean> {
  const found = await lookAt(path);
  if (found === null) return false;
  const thing = thingAt(found);
  if (/^\/(dev\/(fd\/|std)|proc\/)/.test(path)) return thing !== 'folder';
  if (thing === 'pipe' || thing === 'socket')
    throw new InputError(path, `it is a ${thing}, not a file.`, 'Write to another place.');
  return thing === 'device';
}

async function putWhole(path: string, content: Content): Promise<void> {
  await removeParts(dirname(path));
  const aside = asideOf(path);
  await whileWriting([aside], async () => {
    await writeAside(aside, content);
    await rename(aside, path);
  });
}

async function putTogether(
  places: readonly { readonly path: string; readonly text: string }[],
): Promise<void> {
  const parts: { readonly path: string; readonly aside: string; readonly text: string }[] = [];
  for (const { path, text } of places) {
    const isAside = await makeFolder(dirname(path))
      .then(async () => !(await isStream(path)))
      .catch((error: unknown) => refuseWriting(path, error));
    if (isAside) parts.push({ path, aside: asideOf(path), text });
    else await put(path, text);
  }
  const [first] = parts;
  if (first !== undefined) await removeParts(dirname(first.path));
  await whileWriting(
    parts.map(({ aside }) => aside),
    async () => {
      for (const { path, aside, text } of parts)
        await writeAside(aside, text).catch((error: unknown) => refuseWriting(path, error));
      for (const { path, aside } of parts)
        await rename(aside, path).catch((error: unknown) => refuseWriting(path, error));
    },
  );
}

function asideOf(path: string): string {
  return join(dirname(path), newPartName());
}

/** Opened only if nothing of that name is there, not even a link. */
async function writeAside(aside: string, content: Content): Promise<void> {
  await writeFile(aside, content, { flag: 'wx' });
}
