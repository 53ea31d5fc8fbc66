import type { ImportedFile, Notice } from '../vocabulary.ts';
import type { FileSource } from './bytes/file-source.ts';
import { InputError } from './bytes/input-error.ts';
import type { ImportOptions } from './import-options.ts';
import { settleOthers } from './other-half.ts';
import type { UsedRules } from './phrasebook/phrasebook-rules.ts';
import { readFile } from './read-file.ts';
import { foreignTimeline } from './stored/parquet-rows.ts';
import { isStoredTimeline, readStoredTimeline } from './stored/stored-timeline.ts';
import { keepsLaws } from './stored-laws.ts';
import { uniqueFiles } from './unique-files.ts';
import { unusedRules } from './unused-rules.ts';

/** How to read several files; `onFile` is called as each begins. */
export interface FilesOptions extends Omit<ImportOptions, 'neighbour' | 'used'> {
  readonly onFile?: (source: FileSource) => void;
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
 * What needs a day or a year of its neighbours is tried again once they are known.
 */
export async function importFiles(sources: readonly FileSource[], options: FilesOptions): Promise<Imported> {
  const used: UsedRules = new Set();
  const first = await readEach(sources, { ...options, used, neighbour: null }, 0);
  const days = first.flatMap(({ result }) =>
    result instanceof InputError ? [] : result.files.flatMap(({ input }) => input.from ?? []),
  );
  const neighbour = days.length === 0 ? null : Math.min(...days);
  const again =
    neighbour === null ? [] : first.filter(({ result }) => result instanceof InputError).map((f) => f.source);
  const second = await readEach(again, { ...options, used, neighbour }, changesIn(first));
  const last = first.map((f) => second.find((s) => s.source === f.source) ?? f).map((f) => f.result);
  const read = last.flatMap((r) => (r instanceof InputError ? [] : r.files));
  return {
    files: settleOthers(uniqueFiles(read)),
    failures: last.flatMap((r) => (r instanceof InputError ? [r] : r.failures)),
    // Those that a stored timeline was made from were read by another phrasebook.
    phrasebookNotices: [
      ...last.flatMap((r) => (r instanceof InputError ? [] : (r.phrasebookNotices ?? []))),
      ...(last.some(isLog) ? unusedRules(options.phrasebook, used) : []),
    ],
  };
}

function isLog(result: Read | InputError): boolean {
  return !(result instanceof InputError) && !result.isStored;
}

/** What one file gave. */
interface Read extends Imported {
  readonly isStored: boolean;
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
  for (const source of sources) {
    options.onFile?.(source);
    try {
      const keptChanges = kept + changesIn(attempts);
      attempts.push({ source, result: await readSource(source, { ...options, keptChanges }) });
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      attempts.push({ source, result: error });
    }
  }
  return attempts;
}

function changesIn(attempts: readonly Attempt[]): number {
  const files = attempts.flatMap(({ result }) => (result instanceof InputError ? [] : result.files));
  return files.reduce((sum, file) => sum + file.changes.length, 0);
}

async function readSource(source: FileSource, options: ImportOptions): Promise<Read> {
  if (await isStoredTimeline(source)) {
    const stored = await readStoredTimeline(source, options);
    if (!stored.files.every(keepsLaws)) throw foreignTimeline(source.name);
    return { ...stored, isStored: true };
  }
  return { files: [await readFile(source, options)], failures: [], isStored: false };
}
