import { isAbsolute, sep } from 'node:path';
import { InputError, isNoLog, type StoredFile } from '../pipeline.ts';
import { allThings } from './all-things.ts';
import { type FolderFiles, type FoundFile, filesIn, foundFile, sayPassedOver } from './folder-files.ts';
import { pipedFile } from './node-files.ts';
import { storedFile } from './stored-file.ts';
import { refuse } from './system-refusal.ts';
import { lookAt, seeThrough, type Thing, thingAt } from './things.ts';

/** What the arguments name: files to read, paths that nothing can be read from, and what was passed over. */
export interface Found {
  readonly files: readonly StoredFile[];
  readonly failures: readonly InputError[];
  readonly notices: readonly string[];
  /** Which file each name leads to. */
  readonly identities: ReadonlyMap<string, string>;
}

/**
 * The files that the arguments name, each once: files as they are, of a folder or a pattern with `*` all that may be logs, in
 * the order of their names. A path that is not there, or holds no logs, is a failure that does not stop the others.
 */
export async function findFiles(paths: readonly string[]): Promise<Found> {
  const { files, failures, notices } = await filesNamed(paths);
  return {
    files: files.map((file) => file.content ?? storedFile(file)),
    failures,
    notices,
    identities: new Map(files.map((f) => [f.name, f.identity])),
  };
}

/** The same, as what lies where. */
export async function filesNamed(paths: readonly string[]): Promise<FolderFiles> {
  const found = await Promise.all(paths.map((path) => filesAt(path).catch(asFailure)));
  return {
    files: once(found.flatMap((f) => f.files)),
    failures: found.flatMap((f) => f.failures),
    notices: found.flatMap((f) => f.notices),
  };
}

function asFailure(error: unknown): FolderFiles {
  if (error instanceof InputError) return { files: [], failures: [error], notices: [] };
  throw error;
}

function once(files: readonly FoundFile[]): readonly FoundFile[] {
  const seen = new Set<string>();
  return files.filter(({ identity }) => !seen.has(identity) && seen.add(identity));
}

async function filesAt(path: string): Promise<FolderFiles> {
  if (path === '') throw new InputError('a file to read', 'its name is empty.', 'Name a file or a folder.');
  // Not every shell spells patterns out.
  if (/[*?[{]/.test(path) && (await lookAt(path)) === null)
    return someOf(path, await matching(path), without.pattern);
  const found = await seeThrough(path);
  const thing = thingAt(found);
  if (thing === 'folder') return someOf(path, await filesIn(path), without.folder);
  // What the shell itself put in place of a file has a writer, and ends.
  if (thing === 'pipe' && path.startsWith('/dev/'))
    return { files: [{ ...foundFile(path, found), ...(await pipedFile(path)) }], failures: [], notices: [] };
  if (thing !== 'file') throw new InputError(path, ...noFile[thing]);
  return { files: [foundFile(path, found)], failures: [], notices: [] };
}

const noFile: Readonly<Record<Exclude<Thing, 'file' | 'folder'>, readonly [string, string]>> = {
  pipe: ['it is a named pipe.', 'Save its output to a file and name that file.'],
  device: ['it is a device, not a file.', 'Name a file.'],
  socket: ['it is a socket, not a file.', 'Name a file.'],
};

async function matching(pattern: string): Promise<FolderFiles> {
  const { glob } = await import('tinyglobby');
  const names = await glob(sep === '/' ? pattern : pattern.replaceAll(sep, '/'), {
    absolute: isAbsolute(pattern),
    expandDirectories: false,
    fs: allThings,
    // Named, since the package would look for it itself before anything is found.
    cwd: here(pattern),
  });
  const logs = names.filter((name) => !isNoLog(name.replace(/^(\.\.?\/)+/, ''))).sort();
  const found = await Promise.all(logs.map((name) => matched(name).catch(asFailure)));
  return {
    files: found.flatMap((f) => f.files),
    failures: found.flatMap((f) => f.failures),
    notices: found.flatMap((f) => f.notices),
  };
}

/** The folder that the command runs in. Throws InputError where it was removed. */
function here(pattern: string): string {
  try {
    return process.cwd();
  } catch (error) {
    return refuse(pattern, error);
  }
}

/** What a pattern fits besides files and folders is passed over with a line, as in a folder. */
async function matched(name: string): Promise<FolderFiles> {
  const found = await seeThrough(name);
  const thing = thingAt(found);
  if (thing === 'file') return { files: [foundFile(name, found)], failures: [], notices: [] };
  if (thing === 'folder') return { files: [], failures: [], notices: [] };
  return { files: [], failures: [], notices: [sayPassedOver(name)] };
}

const without = {
  pattern: 'no log matches the pattern.',
  folder: 'the folder contains no logs.',
} as const;

/** Whether a failure says no more than that no logs lie there: they may come. */
export function isWithoutLogs({ what }: InputError): boolean {
  return what === without.pattern || what === without.folder;
}

/** The files in the order of their names. Throws InputError if there are none, and nothing says why. */
function someOf(path: string, found: FolderFiles, none: string): FolderFiles {
  if (found.files.length + found.failures.length + found.notices.length === 0)
    throw new InputError(path, none, 'Name the files, or another folder.');
  return { ...found, files: once(found.files).toSorted(byName) };
}

function byName(a: FoundFile, b: FoundFile): number {
  return a.name < b.name ? -1 : a.name > b.name ? 1 : 0;
}
