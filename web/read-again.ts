import { sayCount } from '../src/report/words.ts';
import type { NamedFile } from './protocol.ts';

/** The names of files that the browser does not give any more, since they changed after they were chosen. */
export async function changedSince(files: readonly NamedFile[]): Promise<readonly string[]> {
  const found = await Promise.all(
    files.map(async ({ name, file }) => ((await isReadable(file)) ? [] : [name])),
  );
  return found.flat();
}

async function isReadable(file: File): Promise<boolean> {
  try {
    await file.slice(Math.max(0, file.size - 1)).arrayBuffer();
    return true;
  } catch (error) {
    if (error instanceof DOMException) return false;
    throw error;
  }
}

/** What a person has to do about files that changed; files with a folder in their names were chosen with it. */
export function sayChanged(names: readonly string[]): string {
  const [first = ''] = names;
  const [what, they, them] =
    names.length === 1 ? [first, 'it was', 'it'] : [sayCount(names.length, 'file'), 'they were', 'them'];
  return `${what} changed since ${they} chosen, and this browser does not let a page read ${them} again: press ${chooseAgain(names)}.`;
}

/** What the control is called that takes the same files once more. */
export function chooseAgain(names: readonly string[]): string {
  return names.some((name) => name.includes('/')) ? 'Choose the folder again' : 'Choose the files again';
}
