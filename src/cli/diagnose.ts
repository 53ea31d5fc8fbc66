import { analyse, diagnose } from '../pipeline.ts';
import { diagnoseJson } from '../report/diagnose-json.ts';
import { diagnoseReports } from '../report/diagnose-reports.ts';
import { diagnoseText } from '../report/diagnose-text.ts';
import { shownZone } from '../report/shown-zone.ts';
import type { Diagnosis } from '../vocabulary.ts';
import { type BundleOptions, checkBundleOptions, writeBundle } from './bundle-options.ts';
import { type CommonOptions, clocksOf, importAll, limitsOf, type Status } from './command.ts';
import { painterFor } from './paint.ts';
import type { Streams } from './streams.ts';
import { writeReports } from './write-files.ts';

declare const STEADYPAIR_VERSION: string;

export interface DiagnoseOptions extends CommonOptions, BundleOptions {
  readonly pair?: string | undefined;
  readonly out?: string | undefined;
}

/** `diagnose`: says why a pair will not synchronise, and what to check next. */
export async function diagnoseFiles(
  paths: readonly string[],
  options: DiagnoseOptions,
  streams: Streams,
): Promise<Status> {
  checkBundleOptions(options);
  const imported = await importAll(paths, options, streams);
  const { settings, job } = imported;
  const pair = options.pair ?? settings.pair;
  const analysed = analyse(imported, limitsOf(settings), clocksOf(settings));
  const diagnosis = diagnose(analysed, pair);
  const zone = shownZone(settings.zone, diagnosis.inputs);
  const asked = { zone, version: STEADYPAIR_VERSION };
  const reports =
    options.out === undefined
      ? []
      : await writeReports(options.out, await diagnoseReports(diagnosis, asked), imported.read);
  const { from, to } = settings;
  const bundle = await writeBundle(
    options,
    imported,
    { job, pair, from, to },
    { kind: 'diagnose', analysed, diagnosis },
  );
  streams.stdout.write(
    options.json === true
      ? diagnoseJson(diagnosis)
      : diagnoseText(diagnosis, { zone, paint: painterFor(streams.stdout), reports }),
  );
  if (options.json !== true) streams.stdout.write(bundle);
  return statusOf(diagnosis);
}

/**
 * 0 if nothing is wrong; 1 if a cause was found, or a finding of severity warning or worse concerns the pair; 3 if there is
 * trouble, or may be, and neither. Source: design.md, section 8.
 */
function statusOf(diagnosis: Diagnosis): Status {
  const { healthy, causes, pair, findings } = diagnosis;
  const isFound = causes[0] !== undefined && causes[0].decibans !== null;
  if (isFound || findings.some((f) => f.pair === pair && f.severity !== 'info')) return 1;
  return healthy ? 0 : 3;
}
