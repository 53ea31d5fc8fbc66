import type { BigIntStats, Stats } from 'node:fs';
import { lstat, stat } from 'node:fs/promises';
import { InputError } from '../pipeline.ts';
import { refuse } from './system-refusal.ts';

/** What a path can lead to. */
export type Thing = 'file' | 'folder' | 'pipe' | 'device' | 'socket';

export function thingAt(found: Stats | BigIntStats): Thing {
  if (found.isFile()) return 'file';
  if (found.isDirectory()) return 'folder';
  if (found.isFIFO()) return 'pipe';
  return found.isSocket() ? 'socket' : 'device';
}

/** What a path leads to, links followed. Throws InputError if it leads nowhere, or may not be seen. */
export async function seeThrough(path: string): Promise<BigIntStats> {
  try {
    return await stat(path, { bigint: true });
  } catch (error) {
    if (await isLink(path))
      throw new InputError(path, 'it is a link to a file that does not exist.', 'Repair or remove the link.');
    if (path.includes(notUnicode))
      throw new InputError(path, 'its name is not valid Unicode, or there is no such file.', 'Rename it.');
    return refuse(path, error);
  }
}

/** What stands in a name in place of bytes that are no UTF-8: the file cannot be reached by it. */
const notUnicode = '\ufffd';

async function isLink(path: string): Promise<boolean> {
  return lstat(path).then(
    (found) => found.isSymbolicLink(),
    () => false,
  );
}

/** What a path leads to; `null` where nothing is, or nothing that may be seen. */
export async function lookAt(path: string): Promise<BigIntStats | null> {
  return stat(path, { bigint: true }).catch(() => null);
}
