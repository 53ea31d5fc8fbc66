import type { InputError, StoredFile } from '../pipeline.ts';
import type { FolderFiles } from './folder-files.ts';
import { type FollowedFile, hold, letGo } from './followed-file.ts';
import { awayOf, type Listings, listings } from './listings.ts';
import { matchFiles } from './match-files.ts';
import { noticedChanges } from './noticed-changes.ts';

/** What was found at one look. */
export interface Looked {
  /** Each is the same object as at the look before while it only grew; those that are gone and still count are among them. */
  readonly files: readonly StoredFile[];
  /** What is so as of this look, a line each. */
  readonly notices: readonly string[];
  readonly failures: readonly InputError[];
  /** Which file each name leads to. */
  readonly identities: ReadonlyMap<string, string>;
  /** Something is otherwise than at the look before. */
  readonly hasChanged: boolean;
}

/** Files that are followed as they grow, move, are replaced, go away and come back. */
export interface FollowedFiles {
  look(): Promise<Looked>;
  /** Settles at the next notice of a change, or after so many milliseconds. */
  changed(mostMs: number): Promise<void>;
  /** The last look: nothing follows, and what is half written counts as it stands. */
  finish(): Promise<Looked>;
  close(): Promise<void>;
}

interface State {
  readonly paths: readonly string[];
  files: readonly FollowedFile[];
  listed: FolderFiles | null;
  /** What the look before gave, and the same as text to be compared with. */
  looked: Looked | null;
  before: string;
}

/** A share may tell nothing of its changes. */
const pollMs = 500;
/** So many files that were written last are held open. Chosen here. */
const mostHeld = 64;

/**
 * Follows what the arguments name: files, folders and patterns, as `findFiles` takes them.
 *
 * A file is known by device and inode, or where those are others by its path, and by its first bytes and those before its end.
 * One that was renamed keeps its reading under its new name; where it lies at none of the paths it is read on by its open handle,
 * until it has not grown for a minute. One that was cut, and one that another took the place of, keeps what was read of it under
 * the name "ro1.log (before 14 Mar 2026 09:14:05 UTC)"; a copy of one that was cut goes on with its reading. What cannot be reached
 * stays as it was read, with a notice, and goes on where it comes back as it was or longer.
 */
export function followFiles(paths: readonly string[]): FollowedFiles {
  const state: State = { paths, files: [], listed: null, looked: null, before: '' };
  const ready = listings(paths);
  const noticed = noticedChanges();
  let looking: Promise<unknown> = Promise.resolve();
  // One look after the other: each goes on with what the one before left.
  const look = (isLast: boolean): Promise<Looked> => {
    const next = looking.then(async () => lookAgain(state, await ready, noticed.take(), isLast));
    looking = next.catch(() => undefined);
    return next;
  };
  return {
    async look() {
      const looked = await look(false);
      noticed.watchOnly((await ready).folders());
      return looked;
    },
    async changed(mostMs) {
      for (let left = mostMs; left > 0; left -= pollMs)
        if ((await noticed.next(Math.min(pollMs, left))) || (await (await ready).isOther(state.files)))
          return;
    },
    finish: () => look(true),
    async close() {
      noticed.close();
      await looking;
      await Promise.all(state.files.map(letGo));
    },
  };
}

async function lookAgain(
  state: State,
  lists: Listings,
  noticed: ReadonlySet<string>,
  isLast: boolean,
): Promise<Looked> {
  const now = Date.now();
  const listed = await lists.now(state.files, noticed);
  const { looked } = state;
  // Of thousands of files mostly none is otherwise, and what lies elsewhere has to be asked for.
  const isSame = listed === state.listed && !state.files.some((f) => f.isElsewhere && f.handle !== null);
  if (isSame && looked !== null && !isLast) return { ...looked, hasChanged: false };
  state.listed = listed;
  const pipes = listed.files.flatMap(({ content }) => content ?? []);
  const found = listed.files.filter(({ content }) => content === undefined);
  const { files, failures } = await matchFiles(state.files, found, now);
  const known = new Set(state.files);
  state.files = files;
  if (files.some((f) => f.changedAt === now || !known.has(f))) await holdNewest(files);
  if (isLast) for (const file of files) if (file.life === 'grows') file.life = 'ended';
  const away = awayOf(state.paths, files, listed);
  return told(state, {
    files: [...pipes, ...files.map((f) => f.source)],
    notices: [...listed.notices, ...away.map(sayAway)],
    failures: [...listed.failures.filter(({ where }) => !away.includes(where)), ...failures],
    identities: new Map(listed.files.map(({ name, identity }) => [name, identity])),
  });
}

async function holdNewest(files: readonly FollowedFile[]): Promise<void> {
  const present = files.filter((f) => f.life === 'grows' && !f.isElsewhere);
  const newest = new Set(present.toSorted((a, b) => Number(b.modified - a.modified)).slice(0, mostHeld));
  await Promise.all(present.map((file) => (newest.has(file) ? hold(file) : letGo(file))));
}

function sayAway(path: string): string {
  return `${path}: it cannot be reached now; what was read of it stays, and it is tried again.`;
}

function told(state: State, looked: Omit<Looked, 'hasChanged'>): Looked {
  const { files, notices, failures } = looked;
  const lives = state.files.map(({ name, bytes, identity, life }) => [name, bytes, identity, life]);
  const now = JSON.stringify([lives, files.length, notices, failures.map(({ message }) => message)]);
  const hasChanged = now !== state.before;
  state.before = now;
  state.looked = { ...looked, hasChanged };
  return state.looked;
}
