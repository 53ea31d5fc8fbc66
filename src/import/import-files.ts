import type { ImportedFile } from '../vocabulary.ts';
import type { FileSource } from './bytes/file-source.ts';
import { InputError } from './bytes/input-error.ts';
import type { ImportOptions } from './import-options.ts';
import { ordersOfAlike } from './orders-of-alike.ts';
import { readFile } from './read-file.ts';
import { foreignTimeline } from './stored/parquet-rows.ts';
import { isStoredTimeline, readStoredTimeline } from './stored/stored-timeline.ts';
import { keepsLaws } from './stored-laws.ts';
import { uniqueFiles } from './unique-files.ts';

/** How to read several files; `onFile` is called as each begins. */
export interface FilesOptions extends Omit<ImportOptions, 'neighbour'> {
  readonly onFile?: (source: FileSource) => void;
}

/** What could be read, and what could not. */
export interface Imported {
  readonly files: readonly ImportedFile[];
  readonly failures: readonly InputError[];
}

/**
 * Reads all files; a stored timeline gives the files it was made from. One that cannot be read does not stop the others.
 * What needs a day or a year of its neighbours is tried again once they are known.
 */
export async function importFiles(sources: readonly FileSource[], options: FilesOptions): Promise<Imported> {
  const orders = ordersOfAlike();
  const first = await readEach(sources, { ...options, neighbour: null, onOrder: orders.add }, 0);
  const days = first.flatMap(({ result }) =>
    result instanceof InputError ? [] : result.files.flatMap(({ input }) => input.from ?? []),
  );
  const neighbour = days.length === 0 ? null : Math.min(...days);
  const again =
    neighbour === null ? [] : first.filter(({ result }) => result instanceof InputError).map((f) => f.source);
  const second = await readEach(again, { ...options, neighbour, orderOfAlike: orders.of }, changesIn(first));
  const anew = new Map(second.map((s) => [s.source, s]));
  const last = first.map((f) => anew.get(f.source) ?? f).map((f) => f.result);
  return {
    files: uniqueFiles(last.flatMap((r) => (r instanceof InputError ? [] : r.files))),
    failures: last.flatMap((r) => (r instanceof InputError ? [r] : r.failures)),
  };
}

interface Attempt {
  readonly source: FileSource;
  readonly result: Imported | InputError;
}

async function readEach(
  sources: readonly FileSource[],
  options: FilesOptions & ImportOptions,
  kept: number,
): Promise<readonly Attempt[]> {
  const attempts: Attempt[] = [];
  let keptChanges = kept;
  for (const source of sources) {
    options.onFile?.(source);
    try {
      const attempt = { source, result: await readSource(source, { ...options, keptChanges }) };
      attempts.push(attempt);
      keptChanges += changesIn([attempt]);
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

async function readSource(source: FileSource, options: ImportOptions): Promise<Imported> {
  if (await isStoredTimeline(source)) {
    const stored = await readStoredTimeline(source, options);
    if (!stored.files.every(keepsLaws)) throw foreignTimeline(source.name);
    return stored;
  }
  return { files: [await readFile(source, options)], failures: [] };
}
