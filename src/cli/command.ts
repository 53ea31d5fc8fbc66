import { type Imported, importFiles, limitsWithHold, readPhrasebook, unpackFiles } from '../pipeline.ts';
import { terminal } from '../report/escape.ts';
import { findFiles, readText } from './node-files.ts';
import { mostChanges, platform } from './platform.ts';
import { progressTo } from './progress.ts';
import type { Streams } from './streams.ts';

/** What every command can be told. */
export interface CommonOptions {
  readonly phrasebook?: string | undefined;
  readonly zone?: string | undefined;
  readonly order?: 'day-first' | 'month-first' | undefined;
  readonly year?: number | undefined;
  readonly hold?: number | undefined;
  readonly alignClocks?: boolean | undefined;
  readonly reference?: string | undefined;
  readonly json?: boolean | undefined;
}

/** The exit statuses of design.md, section 8. */
export type Status = 0 | 1 | 2 | 3;

/** Reads all files a command was given. Failures are told on stderr, a line each; throws if nothing was readable. */
export async function importAll(
  paths: readonly string[],
  options: CommonOptions,
  { stderr }: Streams,
): Promise<Imported> {
  const phrasebook =
    options.phrasebook === undefined
      ? readPhrasebook('built-in phrasebook', null)
      : readPhrasebook(options.phrasebook, await readText(options.phrasebook));
  const found = await findFiles(paths);
  const { sources, failures } = await unpackFiles(found.files, platform);
  const progress = progressTo(stderr, sources);
  const read = await importFiles(sources, {
    phrasebook,
    zone: options.zone ?? null,
    order: options.order ?? null,
    year: options.year ?? null,
    sha256: platform.sha256,
    mostChanges,
    onFile: progress.onFile,
    onProgress: progress.onProgress,
  });
  progress.end();
  const imported = { files: read.files, failures: [...found.failures, ...failures, ...read.failures] };
  for (const failure of imported.failures) stderr.write(`${terminal(failure.message)}\n`);
  if (imported.files.length === 0) throw new NothingReadable(imported.failures.length);
  return imported;
}

/** Nothing could be read; why was said already, a line for each file. */
export class NothingReadable extends Error {
  constructor(files: number) {
    super(files === 1 ? 'Nothing could be read.' : `None of the ${files} files could be read.`);
  }
}

export function limitsOf({ hold }: CommonOptions): ReturnType<typeof limitsWithHold> {
  return limitsWithHold(hold ?? null);
}

export function clocksOf({ alignClocks, reference }: CommonOptions): {
  align: boolean;
  reference: string | null;
} {
  return { align: alignClocks === true, reference: reference ?? null };
}
