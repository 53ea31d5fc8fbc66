import { type FSWatcher, watch } from 'node:fs';
import { join } from 'node:path';

/** Notices that something changes in folders, where the platform tells it. */
export interface NoticedChanges {
  /** From now on these folders are watched, and no others. */
  watchOnly(folders: Iterable<string>): void;
  /** Settles at the next change, at once where there was one since `take`, or after so many milliseconds; true for a change. */
  next(mostMs: number): Promise<boolean>;
  /** The paths of what changed since this was asked last. */
  take(): ReadonlySet<string>;
  close(): void;
}

/** Some systems watch only so many folders at once. Chosen here. */
const mostFolders = 128;
/** What is written row by row is looked at once for many rows. Chosen here. */
const togetherMs = 100;

/** What cannot be watched, as a network share may not, is noticed by looking. */
export function noticedChanges(): NoticedChanges {
  const watchers = new Map<string, FSWatcher>();
  let isNoticed = false;
  let noticed = new Set<string>();
  let notice: () => void = () => undefined;
  const onChange = (folder: string, name: string | null): void => {
    isNoticed = true;
    if (name !== null) noticed.add(join(folder, name));
    notice();
  };
  const stop = (folder: string): void => {
    watchers.get(folder)?.close();
    watchers.delete(folder);
  };
  const begin = (folder: string): void => {
    try {
      const watcher = watch(folder, { persistent: false }, (_, name) => onChange(folder, name));
      watcher.on('error', () => stop(folder));
      watchers.set(folder, watcher);
    } catch {
      // It is away, or there are too many: what changes in it is found by looking.
    }
  };
  return {
    watchOnly(folders) {
      const wanted = new Set([...folders].slice(0, mostFolders));
      for (const folder of [...watchers.keys()]) if (!wanted.has(folder)) stop(folder);
      for (const folder of wanted) if (!watchers.has(folder)) begin(folder);
    },
    async next(mostMs) {
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, mostMs);
        notice = () => {
          clearTimeout(timer);
          setTimeout(resolve, Math.min(togetherMs, mostMs));
        };
        if (isNoticed) notice();
      });
      notice = () => undefined;
      return isNoticed;
    },
    take() {
      const taken = noticed;
      noticed = new Set();
      isNoticed = false;
      return taken;
    },
    close() {
      for (const folder of [...watchers.keys()]) stop(folder);
      notice();
    },
  };
}
