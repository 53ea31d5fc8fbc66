import type { BigIntStats, Dirent } from 'node:fs';
import { readdir, realpath } from 'node:fs/promises';
import { dirname, join, relative, sep } from 'node:path';
import { InputError, isNoLog, type StoredFile } from '../pipeline.ts';
import { identityOf } from './identity.ts';
import { inBatches } from './in-batches.ts';
import { refuse } from './system-refusal.ts';
import { lookAt, seeThrough, thingAt } from './things.ts';

/** A file by its name, and which one it is. */
export interface FoundFile {
  readonly name: string;
  readonly bytes: number;
  readonly identity: string;
  /** When it was written last, in nanoseconds. */
  readonly modified: bigint;
  /** What was read of it already, since it can be read only once. */
  readonly content?: StoredFile;
}

/** The files below a folder that may be logs, what stands in their way, and what was passed over. */
export interface FolderFiles {
  readonly files: readonly FoundFile[];
  readonly failures: readonly InputError[];
  readonly notices: readonly string[];
}

export function foundFile(name: string, found: BigIntStats): FoundFile {
  return { name, bytes: Number(found.size), identity: identityOf(found), modified: found.mtimeNs };
}

interface Walk {
  readonly root: string;
  readonly seen: Set<string>;
  readonly links: string[];
  /** The links that led somewhere. */
  readonly followed: string[];
  readonly others: string[];
  readonly files: FoundFile[];
  readonly failures: InputError[];
  readonly notices: string[];
}

/**
 * All files below a folder that may be logs, in the order of their names; links are followed, each folder is walked once. A
 * file that lies there under its own name has that, and not a link's. Throws InputError if the folder itself cannot be read.
 */
export async function filesIn(folder: string): Promise<FolderFiles> {
  const walk: Walk = {
    root: folder,
    seen: new Set(),
    links: [],
    followed: [],
    others: [],
    files: [],
    failures: [],
    notices: [],
  };
  await walkFolder(folder, walk);
  // Longer as it goes: a folder behind a link may hold links.
  for (const link of walk.links) await attempt(walk, () => followLink(link, walk));
  return {
    files: walk.files,
    failures: walk.failures,
    notices: [...sayFollowed(walk), ...walk.notices, ...otherThings(walk)],
  };
}

async function walkFolder(folder: string, walk: Walk): Promise<void> {
  const identity = identityOf(await seeThrough(folder));
  if (walk.seen.has(identity)) return;
  walk.seen.add(identity);
  const entries = await readdir(folder, { withFileTypes: true }).catch((error: unknown) =>
    refuse(folder, error),
  );
  const seen = await seenIn(folder, entries, walk.root);
  for (const entry of entries) await attempt(walk, () => take(join(folder, entry.name), entry, walk, seen));
}

/** What the files of a folder are; a folder may hold thousands. */
async function seenIn(
  folder: string,
  entries: readonly Dirent[],
  root: string,
): Promise<ReadonlyMap<string, BigIntStats>> {
  const paths = entries.filter((entry) => entry.isFile()).map(({ name }) => join(folder, name));
  const logs = paths.filter((path) => !isNoLog(relative(root, path)));
  const looked = await inBatches(logs, async (path) => ({ path, found: await lookAt(path) }));
  return new Map(looked.flatMap(({ path, found }) => (found === null ? [] : [[path, found] as const])));
}

/** What cannot be read below a folder does not stop the rest. */
async function attempt(walk: Walk, step: () => Promise<void>): Promise<void> {
  try {
    await step();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    walk.failures.push(error);
  }
}

async function take(
  path: string,
  entry: Dirent,
  walk: Walk,
  seen: ReadonlyMap<string, BigIntStats>,
): Promise<void> {
  const within = relative(walk.root, path);
  // What a folder is called says nothing of the files in it, unless it is hidden.
  if (isNoLog(entry.isDirectory() ? join(within, 'x') : within)) return;
  if (entry.isDirectory()) await walkFolder(path, walk);
  else if (entry.isSymbolicLink()) walk.links.push(path);
  else if (entry.isFile()) walk.files.push(foundFile(path, seen.get(path) ?? (await seeThrough(path))));
  else walk.others.push(path);
}

async function followLink(link: string, walk: Walk): Promise<void> {
  const found = await seeThrough(link);
  switch (thingAt(found)) {
    case 'file':
      walk.followed.push(link);
      walk.files.push(foundFile(link, found));
      break;
    case 'folder':
      if (walk.seen.has(identityOf(found))) break;
      if (await holds(link, dirname(link)))
        walk.notices.push(`${link}: skipped: it links to a folder that contains it.`);
      else {
        walk.followed.push(link);
        await walkFolder(link, walk);
      }
      break;
    default:
      walk.others.push(link);
  }
}

async function holds(outer: string, inner: string): Promise<boolean> {
  const [around, within] = await Promise.all([realpath(outer), realpath(inner)]);
  return `${within}${sep}`.startsWith(around.endsWith(sep) ? around : `${around}${sep}`);
}

export function sayPassedOver(path: string): string {
  return `${path}: skipped: it is a pipe, socket or device, not a file.`;
}

/** Links lead to what lies elsewhere: a person who looks into the folder may not know. */
function sayFollowed({ root, followed: [first, ...rest] }: Walk): readonly string[] {
  if (first === undefined) return [];
  const which =
    rest.length === 0 ? `one link in it, ${first},` : `${rest.length + 1} links in it, the first ${first},`;
  return [`${root}: ${which} ${rest.length === 0 ? 'was' : 'were'} followed; each file is read once.`];
}

function otherThings({ root, others: [first, ...rest] }: Walk): readonly string[] {
  if (first === undefined) return [];
  if (rest.length === 0) return [sayPassedOver(first)];
  return [`${root}: ${rest.length + 1} pipes, sockets or devices in it were skipped; the first is ${first}.`];
}
