import type { NamedYaml, Settings } from '../bundle/inside.ts';
import {
  type FileSource,
  type Imported,
  type InputError,
  importFiles,
  type KeptReadings,
  limitsWithHold,
  type Phrasebook,
} from '../pipeline.ts';
import { terminal } from '../report/escape.ts';
import { inCommand } from '../report/settings.ts';
import { type OpenedFiles, openGiven } from './open-given.ts';
import { mostChanges, platform } from './platform.ts';
import { progressTo } from './progress.ts';
import type { Output, Streams } from './streams.ts';
import type { ReadFiles } from './write-files.ts';

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
  readonly debug?: boolean | undefined;
}

/** A refusal as the command prints it: with the option that its advice can be followed by. */
export function sayRefusal({ message, setting }: InputError): string {
  return inCommand(message, setting);
}

/** The exit statuses of design.md, section 8. */
export type Status = 0 | 1 | 2 | 3;

/** What was read, which files it lies in, and with which phrasebook. */
export interface ImportedFiles extends Imported {
  readonly read: ReadFiles;
  readonly sources: readonly FileSource[];
  readonly phrasebook: Phrasebook;
  /** The text of the site's own; `null`: plain English alone. */
  readonly phrasebookText: NamedYaml | null;
  /** What decides besides: what was said, else what a bundle says; its choice of pair and time, and its job, are a bundle's alone. */
  readonly settings: Settings;
  readonly job: NamedYaml | null;
  /** What could not be opened, among the failures. */
  readonly notOpened: readonly InputError[];
  /** How many files this program wrote itself. */
  readonly reports: number;
}

/** Reads all files as `importAny` does; throws if nothing was readable. */
export async function importAll(
  paths: readonly string[],
  options: CommonOptions,
  streams: Streams,
  job?: string,
): Promise<ImportedFiles> {
  const imported = await importAny(paths, options, streams, job);
  if (imported.files.length === 0) throw new NothingReadable(imported.failures.length + imported.reports);
  return imported;
}

/**
 * Reads all files a command was given; `job` is one that it reads besides. Failures and what was passed over are told on
 * stderr, a line each.
 */
export async function importAny(
  paths: readonly string[],
  options: CommonOptions,
  { stdout, stderr }: Streams,
  job?: string,
): Promise<ImportedFiles> {
  const opened = await openGiven(paths, options, [stdout, stderr], job);
  const { told, ...imported } = await importOpened(opened, stderr);
  for (const line of told) stderr.write(`${terminal(line)}\n`);
  return imported;
}

/**
 * Reads files that were opened; `told` are the lines on what failed and what was passed over. Progress is shown on `stderr`;
 * `kept` are readings of earlier runs.
 */
export async function importOpened(
  opened: OpenedFiles,
  stderr: Output,
  kept?: KeptReadings,
): Promise<ImportedFiles & { readonly told: readonly string[] }> {
  const { sources, said, phrasebookText, phrasebook, reports, settings, read, notOpened } = opened;
  const progress = progressTo(stderr, sources);
  const { zone, order, year } = settings;
  const imported = await importFiles(sources, {
    phrasebook,
    zone,
    order,
    year,
    sha256: platform.sha256,
    mostChanges,
    onFile: progress.onFile,
    onProgress: progress.onProgress,
    ...(kept === undefined ? {} : { kept }),
  });
  progress.end();
  const failures = [...notOpened, ...imported.failures];
  const told = [...failures.map(sayRefusal), ...opened.notices];
  const { job } = said;
  return {
    ...imported,
    failures,
    read,
    sources,
    phrasebook,
    phrasebookText,
    settings,
    job,
    notOpened,
    reports,
    told,
  };
}

/** Nothing could be read; why was said already, a line for each file. */
export class NothingReadable extends Error {
  constructor(files: number) {
    super(files <= 1 ? 'Nothing could be read.' : `None of the ${files} files could be read.`);
  }
}

export function limitsOf({
  hold,
}: {
  readonly hold?: number | null | undefined;
}): ReturnType<typeof limitsWithHold> {
  return limitsWithHold(hold ?? null);
}

export function clocksOf({
  align,
  alignClocks,
  reference,
}: Pick<CommonOptions, 'alignClocks'> & {
  readonly align?: boolean;
  readonly reference?: string | null | undefined;
}): { align: boolean; reference: string | null } {
  return { align: alignClocks === true || align === true, reference: reference ?? null };
}
