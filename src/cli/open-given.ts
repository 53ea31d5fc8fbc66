import { bundlesSay, type NamedYaml, type SaidByBundles, type Settings } from '../bundle/inside.ts';
import {
  type FileSource,
  type InputError,
  type Phrasebook,
  readPhrasebook,
  type StoredFile,
  unpackFiles,
} from '../pipeline.ts';
import { hasOtherLogs, withoutOwnBundles } from './bundles-given.ts';
import { type Found, findFiles } from './find-files.ts';
import { identityOf } from './identity.ts';
import { readText } from './node-files.ts';
import { withoutOutputs } from './own-outputs.ts';
import { platform } from './platform.ts';
import type { Output } from './streams.ts';
import { lookAt } from './things.ts';
import type { ReadFiles } from './write-files.ts';

/** What the options say of how files are read. */
interface SaidByOptions {
  readonly phrasebook?: string | undefined;
  readonly zone?: string | undefined;
  readonly order?: 'day-first' | 'month-first' | undefined;
  readonly year?: number | undefined;
  readonly hold?: number | undefined;
  readonly alignClocks?: boolean | undefined;
  readonly reference?: string | undefined;
}

/** What a command was given, opened and not read yet. */
export interface OpenedFiles {
  readonly sources: readonly FileSource[];
  readonly notOpened: readonly InputError[];
  /** Lines on what was skipped, and on what applies of bundles. */
  readonly notices: readonly string[];
  readonly said: SaidByBundles;
  /** The text of the site's own; `null`: plain English alone. */
  readonly phrasebookText: NamedYaml | null;
  readonly phrasebook: Phrasebook;
  readonly settings: Settings;
  readonly read: ReadFiles;
  /** How many files this program wrote itself. */
  readonly reports: number;
}

/** What opening files rests on, besides the files. */
interface Asked {
  readonly paths: readonly string[];
  readonly options: SaidByOptions;
  /** The phrasebook that the options name. */
  readonly given: NamedYaml | null;
  /** A file that is read besides. */
  readonly job: string | undefined;
  readonly unpack: typeof unpackFiles;
}

/** Finds and opens what the arguments name, archives unpacked; `job` is a file that is read besides. Throws InputError. */
export async function openGiven(
  paths: readonly string[],
  options: SaidByOptions,
  outputs: readonly Output[],
  job: string | undefined,
): Promise<OpenedFiles> {
  const given = await phrasebookGiven(options);
  const found = await findFiles(paths);
  const logs = { ...found, ...withoutOutputs(found, outputs) };
  return openFound(logs, { paths, options, given, job, unpack: unpackFiles });
}

/** The phrasebook that was named; `null`: none was. Throws InputError if it cannot be used. */
export async function phrasebookGiven({ phrasebook }: SaidByOptions): Promise<NamedYaml | null> {
  if (phrasebook === undefined) return null;
  const given = await yamlAt(phrasebook);
  readPhrasebook(given.file, given.text);
  return given;
}

/** Opens files that were found, archives unpacked. */
export async function openFound(found: Found, asked: Asked): Promise<OpenedFiles> {
  const { paths, options, given, job, unpack } = asked;
  const unpacked = withoutOwnBundles(await unpack(found.files, platform), paths);
  const { sources, failures, reports } = unpacked;
  const said = bundlesSay(unpacked.bundles, hasOtherLogs(unpacked));
  const phrasebookText = given ?? said.phrasebook;
  const phrasebook = readPhrasebook(
    phrasebookText?.file ?? 'built-in phrasebook',
    phrasebookText?.text ?? null,
  );
  return {
    sources,
    notOpened: [...found.failures, ...failures],
    notices: [...found.notices, ...said.notices, ...passedOver(reports)],
    said,
    phrasebookText,
    phrasebook,
    settings: settingsOf(options, said.settings),
    read: await readFilesOf(found.files, found, reports, [options.phrasebook, job]),
    reports: reports.length,
  };
}

/** A YAML file and its text. */
export async function yamlAt(path: string): Promise<NamedYaml> {
  return { file: path, text: await readText(path) };
}

/** What was said comes before what a bundle says. */
function settingsOf(
  { zone, order, year, hold, alignClocks, reference }: SaidByOptions,
  inside: Settings,
): Settings {
  return {
    ...inside,
    zone: zone ?? inside.zone,
    order: order ?? inside.order,
    year: year ?? inside.year,
    hold: hold ?? inside.hold,
    align: alignClocks ?? inside.align,
    reference: reference ?? inside.reference,
  };
}

/** The files that are read; a report of this program is not, and may be written again. */
async function readFilesOf(
  files: readonly StoredFile[],
  { identities }: Found,
  reports: readonly string[],
  others: readonly (string | undefined)[],
): Promise<ReadFiles> {
  const logs = files.filter(({ name }) => !reports.includes(name));
  const also = await Promise.all(others.flatMap((path) => (path === undefined ? [] : [lookAt(path)])));
  return new Set([
    ...logs.flatMap(({ name }) => identities.get(name) ?? []),
    ...also.flatMap((found) => (found === null ? [] : [identityOf(found)])),
  ]);
}

/** One line on files that this program wrote and does not read again. */
function passedOver([first, ...rest]: readonly string[]): readonly string[] {
  if (first === undefined) return [];
  if (rest.length === 0) return [`${first}: skipped: it is output of this program, not a log.`];
  return [`${first} and ${rest.length} more: skipped: they are output of this program, not logs.`];
}
