import type { FoundFile } from './followed-folder.ts';

/** A file that a look at a folder found, and how it is got once more, as it is then. */
export interface LookedAt extends FoundFile {
  readonly file: File;
  readonly handle: Pick<FileSystemFileHandle, 'getFile'>;
}

/** More files than these are no folder of logs: a look each second would take longer than that. */
export const mostFollowed = 2000;

/** Thrown where a folder holds too many files to be followed. */
export class TooManyFiles extends Error {}

/**
 * All files of a folder and of those in it, named with their folder, by sizes and dates alone. Throws DOMException where the
 * folder cannot be read, TooManyFiles where it holds too many.
 */
export async function lookAt(root: FileSystemDirectoryHandle): Promise<readonly LookedAt[]> {
  const handles: { readonly name: string; readonly handle: FileSystemFileHandle }[] = [];
  await gather(root, root.name, handles);
  const found = await Promise.all(handles.map(({ name, handle }) => fileOf(name, handle)));
  return found.filter((one) => one !== null);
}

async function gather(
  folder: FileSystemDirectoryHandle,
  path: string,
  handles: { readonly name: string; readonly handle: FileSystemFileHandle }[],
): Promise<void> {
  for await (const entry of folder.values()) {
    const name = `${path}/${entry.name}`;
    if (isFolder(entry)) await gather(entry, name, handles);
    else if (isFile(entry)) handles.push({ name, handle: entry });
    if (handles.length > mostFollowed) throw new TooManyFiles();
  }
}

async function fileOf(name: string, handle: FileSystemFileHandle): Promise<LookedAt | null> {
  try {
    const file = await handle.getFile();
    const { size, lastModified } = file;
    return { name, size, lastModified, file, handle };
  } catch (error) {
    // It was taken away between the list and this: the next look tells.
    if (error instanceof DOMException && error.name === 'NotFoundError') return null;
    throw error;
  }
}

function isFolder(
  entry: FileSystemDirectoryHandle | FileSystemFileHandle | FileSystemHandle,
): entry is FileSystemDirectoryHandle {
  return entry.kind === 'directory';
}

function isFile(
  entry: FileSystemDirectoryHandle | FileSystemFileHandle | FileSystemHandle,
): entry is FileSystemFileHandle {
  return entry.kind === 'file';
}
