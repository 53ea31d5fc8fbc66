import { dirname, sep } from 'node:path';
import { filesNamed } from './find-files.ts';
import type { FolderFiles, FoundFile } from './folder-files.ts';
import type { FollowedFile } from './followed-file.ts';
import { identityOf } from './identity.ts';
import { inBatches } from './in-batches.ts';
import { lookAt } from './things.ts';

/** What lies at the paths that are looked at, told as cheaply as can be. */
export interface Listings {
  /** As of now; `files` are those that are followed, `noticed` paths at which something changed. */
  now(files: readonly FollowedFile[], noticed: ReadonlySet<string>): Promise<FolderFiles>;
  /** True if a file that grew lately, or a folder, is otherwise than it was then. */
  isOther(files: readonly FollowedFile[]): Promise<boolean>;
  folders(): readonly string[];
}

interface State {
  readonly paths: readonly string[];
  /** What can be read only once is looked at once. */
  readonly pipes: FolderFiles | null;
  last: FolderFiles;
  listedAt: number;
  folders: ReadonlyMap<string, bigint | null>;
}

/** So often all is listed, for what a share's folder does not tell by its time. Chosen here. */
const listEachMs = 5000;
/** What grew within this time is looked at each time. Chosen here. */
const hotMs = 60_000;

const none: ReadonlySet<string> = new Set();
const nothing: FolderFiles = { files: [], failures: [], notices: [] };

/**
 * Listings of files, folders and patterns: all of it every five seconds and whenever the time of a folder changed; in between only
 * the files that grew within a minute, are held open or were noticed.
 */
export async function listings(paths: readonly string[]): Promise<Listings> {
  const isPipe = (path: string): boolean => path.startsWith('/dev/');
  const pipes = paths.some(isPipe) ? await filesNamed(paths.filter(isPipe)) : null;
  const state: State = {
    paths: paths.filter((path) => !isPipe(path)),
    pipes,
    last: nothing,
    listedAt: Number.NEGATIVE_INFINITY,
    folders: new Map(),
  };
  return {
    async now(files, noticed) {
      const found = (await isDue(state)) ? null : await hotNow(state, files, noticed);
      if (found === null) await list(state);
      else state.last = found;
      return withPipes(state);
    },
    isOther: async (files) => (await isDue(state)) || (await hotNow(state, files, none)) !== state.last,
    folders: () => [...state.folders.keys()],
  };
}

function withPipes({ pipes, last }: State): FolderFiles {
  if (pipes === null) return last;
  return {
    files: [...pipes.files, ...last.files],
    failures: [...pipes.failures, ...last.failures],
    notices: [...pipes.notices, ...last.notices],
  };
}

async function isDue({ folders, listedAt }: State): Promise<boolean> {
  if (Date.now() - listedAt >= listEachMs) return true;
  const times = await inBatches([...folders], async ([folder, time]) => (await timeOf(folder)) !== time);
  return times.includes(true);
}

async function list(state: State): Promise<void> {
  const { paths, last } = state;
  // Before the listing: what changes meanwhile is seen the next time.
  const now = new Map<string, bigint | null>();
  const note = async (folder: string): Promise<unknown> => now.set(folder, await timeOf(folder));
  await inBatches([...new Set([...state.folders.keys(), ...paths.map(folderOf)])], note);
  state.listedAt = Date.now();
  const found = await filesNamed(paths);
  // A file that was moved while its folder was listed is none that cannot be read.
  const isNew = found.failures.some(({ message }) => !last.failures.some((f) => f.message === message));
  state.last = isNew ? await filesNamed(paths) : found;
  const folders = new Set([...paths.map(folderOf), ...state.last.files.map(({ name }) => dirname(name))]);
  await inBatches(
    [...folders].filter((folder) => !now.has(folder)),
    note,
  );
  state.folders = new Map([...now].filter(([folder]) => folders.has(folder)));
}

/** The folder that tells of new files: of a pattern what stands before its first part with a `*`. */
function folderOf(path: string): string {
  const special = path.search(/[*?[{]/);
  if (special < 0) return path;
  return dirname(`${path.slice(0, special)}x`);
}

/** The same listing with the files that grow as they are now, the very same where none changed; `null` where one is gone or is another. */
async function hotNow(
  { last }: State,
  files: readonly FollowedFile[],
  noticed: ReadonlySet<string>,
): Promise<FolderFiles | null> {
  const from = Date.now() - hotMs;
  const hot = new Set(files.flatMap((f) => (f.handle !== null || f.changedAt > from ? [f.path] : [])));
  const looked = await inBatches(
    last.files.filter(({ name }) => hot.has(name) || noticed.has(name)),
    async (file) => ({ file, found: await lookAt(file.name) }),
  );
  const changed = new Map<string, FoundFile>();
  for (const { file, found } of looked) {
    if (found === null || identityOf(found) !== file.identity) return null;
    const bytes = Number(found.size);
    if (bytes !== file.bytes || found.mtimeNs !== file.modified)
      changed.set(file.name, { ...file, bytes, modified: found.mtimeNs });
  }
  if (changed.size === 0) return last;
  return { ...last, files: last.files.map((file) => changed.get(file.name) ?? file) };
}

async function timeOf(folder: string): Promise<bigint | null> {
  const found = await lookAt(folder);
  return found?.isDirectory() === true ? found.mtimeNs : null;
}

/** The paths of which files are known and none is there: a share that is away, a folder that was moved. */
export function awayOf(
  paths: readonly string[],
  files: readonly FollowedFile[],
  found: FolderFiles,
): readonly string[] {
  const there = found.files.map(({ name }) => name);
  const isBelow = (path: string) => (name: string) => {
    const folder = folderOf(path);
    return name === path || name.startsWith(folder.endsWith(sep) ? folder : `${folder}${sep}`);
  };
  return paths.filter(
    (path) => !there.some(isBelow(path)) && files.some((f) => f.life === 'grows' && isBelow(path)(f.path)),
  );
}
