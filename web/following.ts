import { type LookedAt, lookAt, mostFollowed, TooManyFiles } from './folder-look.ts';
import { type FoundFile, filesToRead, folderChange, sayGone, sayReplaced } from './followed-folder.ts';
import type { FollowedFile, NamedFile } from './protocol.ts';

/** A folder that is followed, as the views show it. */
export interface FollowedFolder {
  readonly name: string;
  /** How many of its files were read. */
  readonly files: number;
  /** What happened to its files that must be said. */
  readonly said: readonly string[];
  /** Why it cannot be looked at now; `null`: it can. */
  readonly problem: string | null;
}

/** Follows a folder, once a person has let the page read one. */
export interface Following {
  /** `null`: none is followed. */
  now(): FollowedFolder | null;
  /** A file of it as it is at this moment; `null` where it is not there. */
  fileNow(name: string): Promise<File | null>;
  /** When a file of it was written last; `null` where it is none of them. */
  modified(name: string): number | null;
}

/** The page as following needs it. */
export interface FollowingHost {
  /** Files are read now, or a person is asked what to do with them. */
  isBusy(): boolean;
  /** Nothing is read yet. */
  isEmpty(): boolean;
  /** What `now` gives has changed. */
  changed(): void;
}

/** The folder is looked at so often, in milliseconds. */
const lookMs = 1000;
const mostNotes = 3;

interface Followed {
  readonly root: FileSystemDirectoryHandle;
  /** What was read of each file, by name. */
  readonly read: Map<string, FoundFile>;
  readonly handles: Map<string, LookedAt['handle']>;
  /** Files that a person took away. */
  readonly left: Set<string>;
  /** What was given first: a person may be asked about it. */
  offered: readonly NamedFile[] | null;
  /** Those that were gone when it was looked at last. */
  gone: readonly string[];
  /** Files of it were given. */
  isGiven: boolean;
  notes: readonly string[];
  shown: FollowedFolder;
}

/**
 * Follows the folder of a `follow` event until `unfollow`, looking at it each second. What is new in it goes out as `files` the first
 * time, then as `followed-files`; which are gone as `followed-gone`, and that it is over as `followed-end`.
 */
export function followFolders(element: EventTarget, host: FollowingHost): Following {
  const work: Work = { element, host, followed: null };
  const stop = (): void => {
    if (work.followed === null) return;
    work.followed = null;
    host.changed();
  };
  const on = <T>(name: string, act: (detail: T) => void): void =>
    element.addEventListener(name, (event) => event instanceof CustomEvent && act(event.detail));
  on<FileSystemDirectoryHandle>('follow', (root) => void follow(work, root));
  on<null>('unfollow', () => {
    stop();
    element.dispatchEvent(new CustomEvent('followed-end', { detail: null }));
  });
  on<null>('cancel', stop);
  on<string>('remove-file', (name) => {
    work.followed?.left.add(name);
    work.followed?.read.delete(name);
  });
  on<{ readonly files: readonly NamedFile[]; readonly how?: string }>('files', ({ files, how }) => {
    const isOwn = files === work.followed?.offered;
    // Others in its place, or its own refused: there is nothing left to follow.
    if (how === 'not' ? isOwn : how === 'replace' && !isOwn) stop();
  });
  return {
    now: () => work.followed?.shown ?? null,
    fileNow: async (name) => (await work.followed?.handles.get(name)?.getFile().catch(asNothing)) ?? null,
    modified: (name) => work.followed?.read.get(name)?.lastModified ?? null,
  };
}

function asNothing(error: unknown): null {
  if (error instanceof DOMException) return null;
  throw error;
}

interface Work {
  readonly element: EventTarget;
  readonly host: FollowingHost;
  followed: Followed | null;
}

async function follow(work: Work, root: FileSystemDirectoryHandle): Promise<void> {
  const followed: Followed = {
    root,
    read: new Map(),
    handles: new Map(),
    left: new Set(),
    offered: null,
    gone: [],
    isGiven: false,
    notes: [],
    shown: { name: root.name, files: 0, said: [], problem: null },
  };
  work.followed = followed;
  work.host.changed();
  try {
    while (work.followed === followed) {
      if (!work.host.isBusy()) await look(work, followed);
      await new Promise((resolve) => setTimeout(resolve, lookMs));
    }
  } catch (detail) {
    work.followed = null;
    work.host.changed();
    work.element.dispatchEvent(new CustomEvent('problem', { detail }));
  }
}

async function look(work: Work, followed: Followed): Promise<void> {
  const found = await lookAt(followed.root).catch(whyNot);
  if (work.followed !== followed || work.host.isBusy()) return;
  if (typeof found === 'string') {
    show(work, followed, { ...followed.shown, problem: found });
    return;
  }
  const change = folderChange(
    followed.read,
    found.filter(({ name }) => !followed.left.has(name)),
  );
  followed.notes = [...followed.notes, ...sayReplaced(change.replaced)].slice(-mostNotes);
  give(work, followed, filesToRead(change), new Set(change.grown));
  if (change.gone.join('\n') !== followed.gone.join('\n'))
    work.element.dispatchEvent(new CustomEvent('followed-gone', { detail: change.gone }));
  followed.gone = change.gone;
  show(work, followed, {
    name: followed.root.name,
    files: followed.read.size,
    said: [...followed.notes, ...sayGone(change.gone)],
    problem: null,
  });
}

/** Hands on what is to be read. An empty folder is read too where nothing was: the views say what it waits for. */
function give(
  { element, host }: Work,
  followed: Followed,
  more: readonly LookedAt[],
  grown: ReadonlySet<LookedAt>,
): void {
  const isFirst = !followed.isGiven;
  if (more.length === 0 && !(isFirst && host.isEmpty() && followed.offered === null)) return;
  for (const { name, size, lastModified, handle } of more) {
    followed.read.set(name, { name, size, lastModified });
    followed.handles.set(name, handle);
  }
  const files = more.map((found): FollowedFile => {
    const { name, file } = found;
    return { name, file, life: 'grows', hasGrown: grown.has(found) };
  });
  const kind = isFirst ? 'files' : 'followed-files';
  if (isFirst) followed.offered = files;
  followed.isGiven = files.length > 0;
  element.dispatchEvent(new CustomEvent(kind, { detail: { files } }));
}

function show({ host }: Work, followed: Followed, next: FollowedFolder): void {
  if (JSON.stringify(next) === JSON.stringify(followed.shown)) return;
  followed.shown = next;
  host.changed();
}

/** Why a folder cannot be looked at: the share may come back, and is looked for each second. */
function whyNot(error: unknown): string {
  if (error instanceof TooManyFiles)
    return `It holds more than ${mostFollowed.toLocaleString('en')} files. Follow the folder that the logs are written to.`;
  if (!(error instanceof DOMException)) throw error;
  if (error.name === 'NotAllowedError' || error.name === 'SecurityError')
    return 'The browser no longer lets this page read it. Press Follow a folder and choose it again.';
  return 'It cannot be read now: it was moved, or its drive or share is not there. The page keeps trying.';
}
