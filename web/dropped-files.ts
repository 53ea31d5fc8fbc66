import type { NamedFile, Refusal } from './protocol.ts';

/**
 * The files of a drop, those of dropped folders too, named with their folder. Some browsers let a page opened from disk
 * not look into a dropped folder: then it says so, and what to do.
 */
export async function droppedFiles(transfer: DataTransfer): Promise<readonly NamedFile[] | Refusal> {
  // Both lists are empty once this function gives way to another.
  const plain = [...transfer.files].map((file) => ({ name: file.name, file }));
  const entries = [...transfer.items].flatMap((item) => item.webkitGetAsEntry() ?? []);
  const folders = entries.filter(isFolder);
  if (folders.length === 0) return plain;
  try {
    const inside = await Promise.all(folders.map(filesIn));
    const names = new Set(folders.map((folder) => folder.name));
    return [...plain.filter(({ name }) => !names.has(name)), ...inside.flat()];
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    return {
      where: folders[0]?.name ?? 'the folder',
      what: 'this browser does not let a page look into a dropped folder.',
      fix: 'Use “Choose a folder”, or drop the files in it.',
    };
  }
}

async function filesIn(folder: FileSystemDirectoryEntry): Promise<readonly NamedFile[]> {
  const reader = folder.createReader();
  const found: NamedFile[] = [];
  // A folder is handed out in parts; an empty one ends it.
  for (let part = await entriesOf(reader); part.length > 0; part = await entriesOf(reader)) {
    for (const entry of part) {
      if (isFolder(entry)) found.push(...(await filesIn(entry)));
      else if (isFile(entry))
        found.push({ name: entry.fullPath.replace(/^\//, ''), file: await fileOf(entry) });
    }
  }
  return found;
}

function entriesOf(reader: FileSystemDirectoryReader): Promise<readonly FileSystemEntry[]> {
  return new Promise((resolve, reject) => reader.readEntries(resolve, reject));
}

function fileOf(entry: FileSystemFileEntry): Promise<File> {
  return new Promise((resolve, reject) => entry.file(resolve, reject));
}

// Not every browser knows the two kinds by their names.
function isFolder(entry: FileSystemEntry): entry is FileSystemDirectoryEntry {
  return entry.isDirectory;
}

function isFile(entry: FileSystemEntry): entry is FileSystemFileEntry {
  return entry.isFile;
}
