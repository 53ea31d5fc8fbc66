import type { NamedFile } from './protocol.ts';
import { saySize } from './say-size.ts';

/** A reading as a later opening of the page finds it. */
export interface ReadingMark {
  readonly first: string;
  readonly files: number;
  readonly bytes: number;
}

/** Marks the files that are read now, for as long as they are read. */
export interface Marking {
  begin(files: readonly NamedFile[]): void;
  end(): void;
}

const prefix = 'steadypair-reading-';

/**
 * Keeps the mark where it outlives the tab. A tab that is closed takes it away, one that crashes leaves it; a lock, which ends with its
 * tab, tells the mark of another that still reads. A browser that gives a page from disk neither of the two marks nothing.
 */
export function markReading(): Marking {
  const storage = storageHere();
  if (storage === null) return { begin: () => undefined, end: () => undefined };
  const key = `${prefix}${crypto.randomUUID()}`;
  let reading: ReadingMark | null = null;
  // Nobody may find the mark before the lock: it would be that of a tab that died.
  const locked = new Promise<void>((resolve) => {
    void navigator.locks.request(key, () => {
      resolve();
      return new Promise(() => undefined);
    });
  });
  const end = (): void => {
    reading = null;
    storage.removeItem(key);
  };
  window.addEventListener('pagehide', end);
  return {
    begin(files) {
      reading = {
        first: files[0]?.name ?? '',
        files: files.length,
        bytes: files.reduce((sum, { file }) => sum + file.size, 0),
      };
      void locked.then(() => {
        if (reading !== null) storage.setItem(key, JSON.stringify(reading));
      });
    },
    end,
  };
}

/** The readings that ended with their tab, since the page was opened last; they are found once. */
export async function unfinishedReadings(): Promise<readonly ReadingMark[]> {
  const storage = storageHere();
  if (storage === null) return [];
  const { held = [] } = await navigator.locks.query();
  const living = new Set(held.map(({ name }) => name));
  const keys = Object.keys(storage).filter((key) => key.startsWith(prefix) && !living.has(key));
  return keys.flatMap((key) => {
    const mark = markIn(storage.getItem(key) ?? '');
    storage.removeItem(key);
    return mark === null ? [] : [mark];
  });
}

/** One line on a reading that ended with its tab. */
export function sayUnfinished({ first, files, bytes }: ReadingMark): string {
  const which = files > 1 ? `${first} and ${files - 1} more` : first;
  return `${which} (${saySize(bytes)}): the last reading was cut off: the tab crashed or ran out of memory. Read fewer files at a time, or use the command line.`;
}

/** `null` where the browser gives no page from disk a storage, or no locks. */
function storageHere(): Storage | null {
  if (!('locks' in navigator)) return null;
  try {
    return window.localStorage;
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}

/** Another page from disk may have written there. */
function markIn(text: string): ReadingMark | null {
  try {
    const { first, files, bytes } = JSON.parse(text);
    const isMark = typeof first === 'string' && typeof files === 'number' && typeof bytes === 'number';
    return isMark ? { first, files, bytes } : null;
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof TypeError) return null;
    throw error;
  }
}
