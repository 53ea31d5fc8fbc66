import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { steadypair } from './run-command.ts';

/** Writes what some logs say as a Parquet timeline in a folder of its own; gives its path. */
export async function storeTimeline(
  paths: readonly string[],
  ...options: readonly string[]
): Promise<string> {
  const out = join(mkdtempSync(join(tmpdir(), 'stored-')), 'site.parquet');
  const { status, err } = await steadypair(
    'timeline',
    ...paths,
    ...options,
    '--format',
    'parquet',
    '--out',
    out,
  );
  if (status !== 0) throw new Error(err);
  return out;
}
