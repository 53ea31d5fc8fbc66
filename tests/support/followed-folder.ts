import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { allChanges } from '../../src/changes.ts';
import { type FollowedFiles, followFiles, type Looked } from '../../src/cli/followed-files.ts';
import { platform } from '../../src/cli/platform.ts';
import { followedReadings, importFiles, keptUnpacking, readPhrasebook } from '../../src/pipeline.ts';
import type { ImportedFile } from '../../src/vocabulary.ts';

/** What was read at one look. */
export interface LookedInto extends Looked {
  readonly read: readonly ImportedFile[];
  /** The lines of all changes, sorted: those of rows that are all different are the rows. */
  readonly rows: readonly string[];
}

/** Files that are followed and read. */
export interface FollowedFolder {
  readonly files: FollowedFiles;
  look(isLast?: boolean): Promise<LookedInto>;
}

/** A folder of its own. */
export function newFolder(): string {
  return mkdtempSync(join(tmpdir(), 'steadypair-follow-'));
}

/** Row `n` of a log in which each row says something new, a second after the row before. */
export function logRow(n: number): string {
  return `${new Date(Date.UTC(2026, 2, 14, 9) + n * 1000).toISOString()} RO1-A firmware 6.4.${n}`;
}

/** Rows from one on, up to another, each with its line end. */
export function logRows(from: number, to: number): string {
  return Array.from({ length: to - from }, (_, i) => `${logRow(from + i)}\n`).join('');
}

/** Follows and reads what those paths name. */
export function followFolder(paths: readonly string[]): FollowedFolder {
  const files = followFiles(paths);
  const unpack = keptUnpacking();
  const kept = followedReadings();
  const phrasebook = readPhrasebook('built-in phrasebook', null);
  return {
    files,
    async look(isLast = false) {
      const looked = await (isLast ? files.finish() : files.look());
      const { sources, failures } = await unpack(looked.files, platform);
      const options = { phrasebook, zone: null, order: null, year: null, sha256: platform.sha256, kept };
      const imported = await importFiles(sources, options);
      const read = imported.files;
      const rows = read.flatMap((f) => allChanges(f.changes).map((change) => change.text)).sort();
      return { ...looked, failures: [...looked.failures, ...failures, ...imported.failures], read, rows };
    },
  };
}
