import { analyse, readJob, readTime, verify } from '../pipeline.ts';
import { shownZone } from '../report/shown-zone.ts';
import { verifyJson } from '../report/verify-json.ts';
import { reportsOf } from '../report/verify-reports.ts';
import { verifyText } from '../report/verify-text.ts';
import type { Verification } from '../vocabulary.ts';
import { type BundleOptions, checkBundleOptions, writeBundle } from './bundle-options.ts';
import { type CommonOptions, clocksOf, importAll, limitsOf, type Status } from './command.ts';
import { yamlAt } from './open-given.ts';
import { painterFor } from './paint.ts';
import type { Streams } from './streams.ts';
import { writeReports } from './write-files.ts';

declare const STEADYPAIR_VERSION: string;

export interface VerifyOptions extends CommonOptions, BundleOptions {
  readonly pair?: string | undefined;
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly job?: string | undefined;
  readonly out?: string | undefined;
}

/** `verify`: finds the swaps, judges them, writes a report for each. */
export async function verifyFiles(
  paths: readonly string[],
  options: VerifyOptions,
  streams: Streams,
): Promise<Status> {
  checkBundleOptions(options);
  const given = options.job === undefined ? null : await yamlAt(options.job);
  if (given !== null) readJob(given.file, given.text);
  filterOf(options, options.zone ?? null);
  const imported = await importAll(paths, options, streams, options.job);
  const { settings } = imported;
  const said = filterOf(options, settings.zone);
  const filter = { from: said.from ?? settings.from, to: said.to ?? settings.to };
  const pair = options.pair ?? settings.pair;
  const jobText = given ?? imported.job;
  const job = jobText === null ? null : readJob(jobText.file, jobText.text);
  const analysed = analyse(imported, limitsOf(settings), clocksOf(settings));
  const verification = verify(analysed, pair, filter, job);
  const shown = shownZone(settings.zone, verification.inputs);
  const asked = { zone: shown, version: STEADYPAIR_VERSION };
  const reports =
    options.out === undefined
      ? []
      : await writeReports(options.out, await reportsOf(verification, asked), imported.read);
  const bundle = await writeBundle(
    options,
    imported,
    { job: jobText, pair, ...filter },
    { kind: 'verify', analysed, verification },
  );
  streams.stdout.write(
    options.json === true
      ? verifyJson(verification)
      : verifyText(verification, { zone: shown, paint: painterFor(streams.stdout), reports }),
  );
  if (options.json !== true) streams.stdout.write(bundle);
  return statusOf(verification);
}

/** From when to when swaps are looked at. Throws InputError for what is no time. */
function filterOf({ from, to }: VerifyOptions, zone: string | null) {
  const read = (option: string, text: string | undefined): number | null =>
    text === undefined ? null : readTime(option, text, zone ?? 'UTC');
  return { from: read('--from', from), to: read('--to', to) };
}

/** Where there is a swap its verdict alone decides; with several 1 before 3 before 0. */
export function statusOf({ swaps }: Pick<Verification, 'swaps'>): Status {
  if (swaps.length === 0) return 3;
  if (swaps.some((s) => s.verdict === 'not-verified')) return 1;
  return swaps.some((s) => s.verdict === 'inconclusive') ? 3 : 0;
}
