import type { ImportedFile, Notice } from '../vocabulary.ts';
import type { FileSource } from './bytes/file-source.ts';
import { InputError } from './bytes/input-error.ts';
import { zoneOf } from './clock/zones.ts';
import type { ImportOptions } from './import-options.ts';
import { type KeptReadings, memoryOf } from './kept-readings.ts';
import { ordersOfAlike } from './orders-of-alike.ts';
import { settleOthers } from './other-half.ts';
import type { UsedRules } from './phrasebook/phrasebook-rules.ts';
import { type Read, readSource } from './read-source.ts';
import { uniqueFiles } from './unique-files.ts';
import { unusedRules } from './unused-rules.ts';

/** How to read several files. */
export interface FilesOptions extends Omit<ImportOptions, 'neighbour' | 'used'> {
  /** Told of each file as its reading begins. */
  readonly onFile?: (source: FileSource) => void;
  /** Told of what could not be read, as soon as that is known; some of it is tried again at the end. */
  readonly onFailure?: (failure: InputError) => void;
  /** Readings of earlier runs: the files that they still stand for are not read again. */
  readonly kept?: KeptReadings;
  /** Told of those files, before any other is read. */
  readonly onKept?: (sources: readonly FileSource[]) => void;
}

/** What could be read, and what could not. */
export interface Imported {
  readonly files: readonly ImportedFile[];
  readonly failures: readonly InputError[];
  /** What must be said of the phrasebook, over all files; it is about none of them. */
  readonly phrasebookNotices?: readonly Notice[];
}

/**
 * Reads all files; a stored timeline gives the files it was made from. One that cannot be read does not stop the others.
 * What needs a day, a year or the pairs of its neighbours is tried again once they are known. Throws InputError, once for all files,
 * for a zone that does not exist.
 */
export async function importFiles(sources: readonly FileSource[], options: FilesOptions): Promise<Imported> {
  if (options.zone !== null) zoneOf(options.zone, '--zone');
  const used: UsedRules = new Set();
  const orders = ordersOfAlike();
  const alone = { ...options, used, neighbour: null, onOrder: orders.add };
  options.onKept?.(sources.filter((source) => options.kept?.has(source, alone) === true));
  const first = await readEach(sources, alone, 0);
  const days = first.flatMap(({ result }) =>
    result instanceof InputError ? [] : result.files.flatMap(({ input }) => input.from ?? []),
  );
  const neighbour = days.length === 0 ? null : Math.min(...days);
  const knownPairs = pairsWithHalves(first);
  const again = first.filter(({ result }) =>
    result instanceof InputError ? neighbour !== null : result.files.some((f) => namesOne(f, knownPairs)),
  );
  const second = await readEach(
    again.map((f) => f.source),
    { ...options, used, neighbour, knownPairs, orderOfAlike: orders.of },
    allMemoryOf(first),
  );
  const renewed = new Map(second.map((s) => [s.source, s]));
  const last = first.map((f) => renewed.get(f.source) ?? f).map((f) => f.result);
  const read = last.flatMap((r) => (r instanceof InputError ? [] : r.files));
  return {
    files: settleOthers(uniqueFiles(read)),
    failures: last.flatMap((r) => (r instanceof InputError ? [r] : r.failures)),
    // Those that a stored timeline was made from were read by another phrasebook.
    phrasebookNotices: [
      ...last.flatMap((r) => (r instanceof InputError ? [] : r.phrasebookNotices)),
      ...(last.some(isLog) ? unusedRules(options.phrasebook, used) : []),
    ],
  };
}

/** The pairs of which some file names a half or a role. */
function pairsWithHalves(attempts: readonly Attempt[]): ReadonlySet<string> {
  const files = attempts.flatMap(({ result }) => (result instanceof InputError ? [] : result.files));
  const subjects = files.flatMap((f) => f.streams.map((s) => s.subject));
  return new Set(subjects.flatMap(({ pair, half, role }) => (half === null && role === null ? [] : [pair])));
}

/** Whether a file has units that are one of those pairs and were not known to be. */
function namesOne({ unknown }: ImportedFile, pairs: ReadonlySet<string>): boolean {
  return unknown.some(({ kind, name }) => kind === 'unit' && pairs.has(name));
}

function isLog(result: Read | InputError): boolean {
  return !(result instanceof InputError) && !result.isStored;
}

interface Attempt {
  readonly source: FileSource;
  readonly result: Read | InputError;
}

async function readEach(
  sources: readonly FileSource[],
  options: FilesOptions & ImportOptions,
  kept: number,
): Promise<readonly Attempt[]> {
  const attempts: Attempt[] = [];
  let keptChanges = kept;
  const read = options.kept?.read ?? readSource;
  for (const source of sources) {
    options.onFile?.(source);
    try {
      const attempt = { source, result: await read(source, { ...options, keptChanges }) };
      attempts.push(attempt);
      keptChanges += memoryOf(attempt.result);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      options.onFailure?.(error);
      attempts.push({ source, result: error });
    }
  }
  return attempts;
}

function allMemoryOf(attempts: readonly Attempt[]): number {
  return attempts.reduce((sum, { result }) => sum + (result instanceof InputError ? 0 : memoryOf(result)), 0);
}
