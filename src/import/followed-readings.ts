import type { Interval } from '../vocabulary.ts';
import { type FileSource, type GrowingFile, isGrowing } from './bytes/file-source.ts';
import { InputError } from './bytes/input-error.ts';
import { checkMemoryBudget } from './changes/memory-budget.ts';
import { type Followed, goOn, isUpToDate, newFollowed, stands } from './followed-file.ts';
import type { ImportOptions } from './import-options.ts';
import { type KeptReadings, keptReadings, memoryOf, saidBesides } from './kept-readings.ts';
import type { Read } from './read-source.ts';
import { renamed } from './unique-files.ts';

/** A run reads a file alone, and perhaps once more with what the others say. */
const mostKept = 2;
/** So many files are kept open: those that grew, and else the largest. Chosen here. */
const mostOpen = 64;
/** Rows within a second may be out of order. Chosen here. */
const togetherMs = 1000;

/**
 * Readings of files that grow: each is read once from its beginning, and from then on only what is new of it; what it gives is at
 * any moment what a whole reading of its whole lines would give. Files that do not grow are kept as `keptReadings` keeps them.
 *
 * A file is read again from its beginning whenever it grew: while it has fewer than 64 KB, by which its layout and encoding are recognised;
 * where it is a stored timeline; where the platform's hasher cannot tell a digest so far. It is read again once: where what was said
 * besides is otherwise (a pair that another file names first, a year or an order that another file settles); after so many
 * others grew that it was not kept open; and where `fedWay` says so. An open quote keeps lines back in a file of more than
 * 16 MB, until it is closed or a megabyte long.
 *
 * Of one that is gone what was read stays. Where what came in the place of a file begins before it ended, the old one gives nothing.
 * A file that was renamed is read as the file of its first name, and named by its name now.
 */
export function followedReadings(): KeptReadings {
  const others = keptReadings();
  const kept: Kept = { all: new WeakMap(), open: [] };
  return {
    has(source, options) {
      if (!isGrowing(source)) return others.has(source, options);
      const found = find(kept, source, options);
      return found !== undefined && isUpToDate(found, source);
    },
    async read(source, options) {
      if (!isGrowing(source)) return others.read(source, options);
      if (source.replacedBy !== null && (await isReplaced(kept, source, options))) return nothing;
      return underName(await readGrowing(kept, source, options), source);
    },
  };
}

interface Kept {
  /** Of each file, the reading that was begun last first. */
  readonly all: WeakMap<FileSource, readonly Followed[]>;
  /** Those that are open: they keep no file alive that nobody follows any more. */
  open: readonly WeakRef<Followed>[];
}

function find({ all }: Kept, source: GrowingFile, options: ImportOptions): Followed | undefined {
  const said = saidBesides({ name: source.readAs }, options);
  const known = all.get(source) ?? [];
  const found = known.find((f) => f.said === said && stands(f, source, options));
  // Of what is nowhere any more there is no other reading.
  return found ?? (source.life === 'gone' ? known.find((f) => f.read !== null || f.fed !== null) : undefined);
}

function begin({ all }: Kept, source: GrowingFile, options: ImportOptions): Followed {
  const begun = newFollowed(source, options);
  const rest = (all.get(source) ?? []).filter((f) => f.said !== begun.said);
  all.set(source, [begun, ...rest].slice(0, mostKept));
  return begun;
}

async function readGrowing(kept: Kept, source: GrowingFile, options: ImportOptions): Promise<Read> {
  const followed = find(kept, source, options) ?? begin(kept, source, options);
  if (!isUpToDate(followed, source)) {
    const wasOpen = followed.fed !== null;
    await goOn(followed, source, options);
    if (!wasOpen && followed.fed !== null) keepFew(kept, followed);
  }
  for (const place of followed.used) options.used?.add(place);
  for (const [file, order] of followed.orders) options.onOrder?.(file, order);
  const { read } = followed;
  if (read === null || read instanceof InputError) throw read ?? lost(source);
  checkMemoryBudget(source.name, memoryOf(read), options);
  return read;
}

/** Closes what is one too many: of those that never grew the smallest, which is read again the soonest. */
function keepFew(kept: Kept, opened: Followed): void {
  const before = kept.open.flatMap((ref) => ref.deref() ?? []);
  const still = [...new Set([...before, opened])].filter(({ fed }) => fed !== null);
  const inOrder = still.sort((a, b) => Number(b.hasGrown) - Number(a.hasGrown) || b.bytes - a.bytes);
  for (const one of inOrder.slice(mostOpen)) one.fed = null;
  kept.open = inOrder.slice(0, mostOpen).map((one) => new WeakRef(one));
}

/** The end of what was read of a file against the begin of all that came in its place. */
async function isReplaced(kept: Kept, source: GrowingFile, options: ImportOptions): Promise<boolean> {
  const ends = extent(kept, source)?.to;
  for (let next = source.replacedBy; next !== null && ends !== undefined; next = next.replacedBy) {
    if (extent(kept, next) === undefined) await readGrowing(kept, next, options).catch(asFailure);
    const begins = extent(kept, next)?.from;
    if (begins !== undefined && begins < ends - togetherMs) return true;
  }
  return false;
}

const nothing: Read = { files: [], failures: [], phrasebookNotices: [], isStored: false };

function lost({ name }: GrowingFile): InputError {
  return new InputError(name, 'it was replaced before it was read.', 'Export it again if it matters.');
}

function asFailure(error: unknown): InputError {
  if (error instanceof InputError) return error;
  throw error;
}

/** The first and the last stamp of a file, by the reading that saw the most of it. */
function extent({ all }: Kept, source: GrowingFile): Interval | undefined {
  const seen = (all.get(source) ?? []).toSorted((a, b) => b.bytes - a.bytes);
  for (const { read } of seen) {
    const { from = null, to = null } = read instanceof InputError ? {} : (read?.files[0]?.input ?? {});
    if (from !== null && to !== null) return { from, to };
  }
  return undefined;
}

function underName(read: Read, { name, readAs }: GrowingFile): Read {
  return name === readAs ? read : { ...read, files: read.files.map((file) => renamed(file, name)) };
}
