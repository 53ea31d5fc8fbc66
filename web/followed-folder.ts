import { sayCount } from '../src/report/words.ts';

/** A file of a folder as a look at it finds it, without its content. */
export interface FoundFile {
  /** With its folder. */
  readonly name: string;
  /** Bytes. */
  readonly size: number;
  /** When it was written last, in milliseconds on the clock of whoever wrote it. */
  readonly lastModified: number;
}

/** What a look at a folder found otherwise than what was read of it last. */
export interface FolderChange<F extends FoundFile> {
  readonly fresh: readonly F[];
  readonly grown: readonly F[];
  /** Shorter than what was read, or written anew at the same length. */
  readonly replaced: readonly F[];
  /** Names of what was read and is not there. */
  readonly gone: readonly string[];
}

/** Compares what was read last, by names, with what is there now. A file without content is not there yet. */
export function folderChange<F extends FoundFile>(
  read: ReadonlyMap<string, FoundFile>,
  found: readonly F[],
): FolderChange<F> {
  const there = found.filter(({ size }) => size > 0);
  const names = new Set(there.map(({ name }) => name));
  const kindOf = ({ name, size, lastModified }: F): 'fresh' | 'grown' | 'replaced' | 'same' => {
    const before = read.get(name);
    if (before === undefined) return 'fresh';
    if (size > before.size) return 'grown';
    return size === before.size && lastModified === before.lastModified ? 'same' : 'replaced';
  };
  const of = (kind: ReturnType<typeof kindOf>): readonly F[] => there.filter((file) => kindOf(file) === kind);
  return {
    fresh: of('fresh'),
    grown: of('grown'),
    replaced: of('replaced'),
    gone: [...read.keys()].filter((name) => !names.has(name)),
  };
}

/** What has to be read again of it. */
export function filesToRead<F extends FoundFile>({ fresh, grown, replaced }: FolderChange<F>): readonly F[] {
  return [...fresh, ...grown, ...replaced];
}

/** So many files of one kind are named. */
const mostNamed = 2;

/** What must be said of files that were replaced; growing and coming is what logs do. */
export function sayReplaced(replaced: readonly FoundFile[]): readonly string[] {
  if (replaced.length === 0) return [];
  const isOne = replaced.length === 1;
  const names = replaced.map(({ name }) => name);
  return [
    `${sayNames(names)} ${isOne ? 'was' : 'were'} replaced by other content and ${isOne ? 'was' : 'were'} read again from the start.`,
  ];
}

/** What must be said of files that vanished. */
export function sayGone(gone: readonly string[]): readonly string[] {
  if (gone.length === 0) return [];
  const isOne = gone.length === 1;
  return [
    `${sayNames(gone)} ${isOne ? 'is' : 'are'} no longer in the folder; what was read of ${isOne ? 'it' : 'them'} still counts.`,
  ];
}

function sayNames(names: readonly string[]): string {
  return names.length > mostNamed ? sayCount(names.length, 'file') : names.join(' and ');
}
