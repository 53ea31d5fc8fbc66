import type { NamedYaml } from '../bundle/inside.ts';
import {
  type Analysed,
  analyse,
  followedReadings,
  keptUnpacking,
  lastHour,
  planProblem,
  readJob,
  swapsNow,
} from '../pipeline.ts';
import type { Job, Staff, SwapNow } from '../vocabulary.ts';
import type { BundleOptions } from './bundle-options.ts';
import {
  type CommonOptions,
  clocksOf,
  type ImportedFiles,
  importOpened,
  limitsOf,
  sayRefusal,
} from './command.ts';
import { isWithoutLogs } from './find-files.ts';
import type { FollowedFiles } from './followed-files.ts';
import { openFound, phrasebookGiven } from './open-given.ts';
import { withoutOutputs } from './own-outputs.ts';
import type { Streams } from './streams.ts';

/** What one reading of the followed files gave. */
export interface Turn {
  readonly analysed: Analysed;
  readonly imported: ImportedFiles;
  /** The job as given, else the one in a bundle, with its text. */
  readonly job: Job | null;
  readonly jobText: NamedYaml | null;
  readonly pair: string | null;
  /** The pair that was named, or all in work, the one with the newest step first. */
  readonly now: readonly SwapNow[];
  /** Pairs in work besides the one that was named. */
  readonly beside: readonly SwapNow[];
  /** The last hour of the pair that is shown first; `null` where there is none. */
  readonly staff: Staff | null;
  /** What is waited for where there is none. */
  readonly waitsFor: string;
}

/** What a look at the followed files gave. */
export interface Looked {
  /** `null` where nothing has changed, or nothing is there any more: a share that vanishes comes back. */
  readonly turn: Turn | null;
  /** What failed, and what was passed over, as far as the look before did not say it. */
  readonly told: readonly string[];
}

/** What a watch can be told. */
export interface WatchOptions extends CommonOptions, BundleOptions {
  readonly pair?: string | undefined;
  readonly job?: string | undefined;
  readonly out?: string | undefined;
}

/**
 * Gives a function that looks at the files, for the last time or not, and reads what has changed: the rest was read before.
 * Throws InputError if the phrasebook or the zone cannot be used.
 */
export async function turnsOf(
  followed: FollowedFiles,
  paths: readonly string[],
  options: WatchOptions,
  job: NamedYaml | null,
  { stdout, stderr }: Streams,
): Promise<(isLast: boolean) => Promise<Looked>> {
  const given = await phrasebookGiven(options);
  const kept = followedReadings();
  const unpack = keptUnpacking();
  let said: readonly string[] = [];
  let [isFirst, hasRead] = [true, false];
  return async (isLast) => {
    const { hasChanged, ...found } = await (isLast ? followed.finish() : followed.look());
    if (!hasChanged && !isFirst) return { turn: null, told: [] };
    // As long as there is nothing, that is what is waited for, and no failure.
    const failures =
      found.files.length === 0 ? found.failures.filter((f) => !isWithoutLogs(f)) : found.failures;
    const logs = { ...found, ...withoutOutputs(found, [stdout, stderr], !isFirst), failures };
    // Progress is of use while the history is read: afterwards it would be drawn into the panel.
    const progress = isFirst ? stderr : { ...stderr, isTerminal: false };
    const opened = await openFound(logs, { paths, options, given, job: options.job, unpack });
    const imported = await importOpened(opened, progress, kept);
    const { settings } = imported;
    const jobText = job ?? imported.job;
    const used = jobText === null ? null : readJob(jobText.file, jobText.text);
    const pair = options.pair ?? settings.pair;
    const analysed = analyse(imported, limitsOf(settings), clocksOf(settings));
    const isThere = analysed.files.length > 0;
    const problem = isThere ? planProblem(analysed, used) : null;
    const lines = [...toldYoung(imported, isLast), ...(problem === null ? [] : [sayRefusal(problem)])];
    const told = lines.filter((line) => !said.includes(line));
    said = lines;
    isFirst = false;
    if (!isThere && hasRead) return { turn: null, told };
    hasRead = isThere;
    const shown = shownOf(analysed, paths, pair, used);
    const [first] = shown.now;
    const staff = first === undefined ? null : lastHour(analysed, first.pair);
    return { turn: { analysed, imported, job: used, jobText, pair, ...shown, staff }, told };
  };
}

/** A file of so few bytes may be too short yet to be recognised. Chosen here. */
const youngBytes = 1024;

/** What failed and what was passed over; of a file that has only just begun, that it is read again. */
function toldYoung(
  { told, failures, sources }: Awaited<ReturnType<typeof importOpened>>,
  isLast: boolean,
): readonly string[] {
  if (isLast) return told;
  const young = sources.filter(({ bytes }) => bytes !== null && bytes < youngBytes).map(({ name }) => name);
  const shorter = new Map(
    failures
      .filter(({ where }) => young.includes(where))
      .map((f) => [sayRefusal(f), `${f.where}: not recognised yet; it is read again as it grows.`]),
  );
  return told.map((line) => shorter.get(line) ?? line);
}

/** The pairs in work, or what is waited for where there is none. */
function shownOf(
  analysed: Analysed,
  paths: readonly string[],
  pair: string | null,
  job: Job | null,
): Pick<Turn, 'now' | 'beside' | 'waitsFor'> {
  const none = (waitsFor: string): ReturnType<typeof shownOf> => ({ now: [], beside: [], waitsFor });
  if (analysed.files.length === 0) return none(`Waiting for the first log in ${paths.join(', ')}.`);
  const names = analysed.timelines.map((t) => t.pair);
  const known = `Pairs: ${names.join(', ') || 'none yet'}.`;
  const all = swapsNow(analysed, null, job);
  if (pair === null) return { ...none(`No pair in work: waiting for the first removal. ${known}`), now: all };
  if (!names.some((name) => name.toLowerCase() === pair.toLowerCase()))
    return none(`Waiting for pair ${pair}: no log names it yet. ${known}`);
  const now = swapsNow(analysed, pair, job);
  return { now, beside: all.filter((one) => !now.some((n) => n.pair === one.pair)), waitsFor: '' };
}
