import type { ImportedFile, Notice } from '../vocabulary.ts';
import type { FileSource } from './bytes/file-source.ts';
import type { InputError } from './bytes/input-error.ts';
import type { ImportOptions } from './import-options.ts';
import { readFile } from './read-file.ts';
import { foreignTimeline } from './stored/parquet-file.ts';
import { isStoredTimeline, readStoredTimeline } from './stored/stored-timeline.ts';
import { keepsLaws } from './stored-laws.ts';

/** What one file gave. */
export interface Read {
  readonly files: readonly ImportedFile[];
  /** What could not be read when it was stored. */
  readonly failures: readonly InputError[];
  /** What was said of the phrasebook that a stored timeline was made with. */
  readonly phrasebookNotices: readonly Notice[];
  readonly isStored: boolean;
}

/** Reads a log, or a stored timeline, which gives the files it was made from. Throws InputError if nothing can be used. */
export async function readSource(source: FileSource, options: ImportOptions): Promise<Read> {
  if (await isStoredTimeline(source)) {
    const stored = await readStoredTimeline(source, options);
    if (!stored.files.every(keepsLaws)) throw foreignTimeline(source.name);
    return { ...stored, isStored: true };
  }
  const file = await readFile(source, options);
  return { files: [file], failures: [], phrasebookNotices: [], isStored: false };
}
