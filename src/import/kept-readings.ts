import type { FileSource } from './bytes/file-source.ts';
import { InputError } from './bytes/input-error.ts';
import { checkMemoryBudget, memoryTaken } from './changes/memory-budget.ts';
import type { DateOrder } from './clock/stamp.ts';
import type { ImportOptions } from './import-options.ts';
import { type Listening, listening } from './phrasebook/listening.ts';
import { type Read, readSource } from './read-source.ts';

/**
 * Readings of files that are kept from one run to the next: what would read a file alike, to the letter, does not read it
 * once more. A file is known by its source, the object itself.
 */
export interface KeptReadings {
  /** True if the file need not be read with these options. */
  has(source: FileSource, options: ImportOptions): boolean;
  /** What the file gives, read or kept. Throws InputError as `readSource` does. */
  read(source: FileSource, options: ImportOptions): Promise<Read>;
}

/** A file read once, and what that depended on. */
interface Kept {
  /** Of what fails only that its dates can be read both ways is kept: all else may be otherwise the next time. */
  readonly read: Read | InputError;
  readonly asked: Listening;
  readonly used: ReadonlySet<string>;
  readonly orders: readonly (readonly [string, DateOrder])[];
  /** All that was said besides the phrasebook. */
  readonly said: string;
}

/** A run reads a file alone, and perhaps once more with what the others say. */
const mostKept = 2;

/** Nothing is kept yet. */
export function keptReadings(): KeptReadings {
  const all = new WeakMap<FileSource, readonly Kept[]>();
  const find = (source: FileSource, options: ImportOptions): Kept | undefined => {
    const said = saidBesides(source, options);
    // A stored timeline was read already by a phrasebook of its own.
    return all
      .get(source)
      ?.find((k) => isStored(k) || (k.said === said && k.asked.answersAlike(options.phrasebook)));
  };
  const keep = (source: FileSource, kept: Kept): void => {
    // One by another phrasebook is of no use any more, and may hold much.
    const others = (all.get(source) ?? []).filter(({ said }) => said !== kept.said);
    all.set(source, [kept, ...others].slice(0, mostKept));
  };
  return {
    has: (source, options) => find(source, options) !== undefined,
    async read(source, options) {
      const known = find(source, options);
      const { read, used, orders } = known ?? (await readOnce(source, options, keep));
      for (const place of used) options.used?.add(place);
      for (const [file, order] of orders) options.onOrder?.(file, order);
      if (read instanceof InputError) throw read;
      if (known !== undefined) checkMemoryBudget(source.name, memoryOf(read), options);
      return read;
    },
  };
}

function isStored({ read }: Kept): boolean {
  return !(read instanceof InputError) && read.isStored;
}

async function readOnce(
  source: FileSource,
  options: ImportOptions,
  keep: (source: FileSource, kept: Kept) => void,
): Promise<Kept> {
  const asked = listening(options.phrasebook, source.name);
  const used = new Set<string>();
  const orders: (readonly [string, DateOrder])[] = [];
  const onOrder = (file: string, order: DateOrder): void => void orders.push([file, order]);
  const own = { ...options, phrasebook: asked.phrasebook, used, onOrder };
  const read = await readSource(source, own).catch(asFailure);
  const kept = { read, asked, used, orders, said: saidBesides(source, options) };
  if (!(read instanceof InputError) || read.kind === 'date-order') keep(source, kept);
  return kept;
}

function asFailure(error: unknown): InputError {
  if (error instanceof InputError) return error;
  throw error;
}

/** All that is said of a file of that name besides the phrasebook. */
export function saidBesides({ name }: Pick<FileSource, 'name'>, options: ImportOptions): string {
  const { zone, order, year, neighbour, knownPairs, orderOfAlike } = options;
  const pairs = knownPairs === undefined ? null : [...knownPairs].sort();
  return JSON.stringify([zone, order, year, neighbour, pairs, orderOfAlike?.(name) ?? null]);
}

/** What a reading takes of the budget of memory. */
export function memoryOf({ files }: Read): number {
  return files.reduce((sum, file) => sum + memoryTaken(file.changes.length, file.streams.length), 0);
}
