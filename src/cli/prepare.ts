import { analyse, prepareSwap, readJob } from '../pipeline.ts';
import { draftJob } from '../report/draft-job.ts';
import { prepareJson } from '../report/prepare-json.ts';
import { prepareReports } from '../report/prepare-reports.ts';
import { prepareText } from '../report/prepare-text.ts';
import { shownZone } from '../report/shown-zone.ts';
import type { WorkSheet } from '../vocabulary.ts';
import { type CommonOptions, clocksOf, importAll, limitsOf, type Status } from './command.ts';
import { yamlAt } from './open-given.ts';
import { painterFor } from './paint.ts';
import type { Streams } from './streams.ts';
import { writeNew, writeReports } from './write-files.ts';

declare const STEADYPAIR_VERSION: string;

export interface PrepareOptions extends CommonOptions {
  readonly pair?: string | undefined;
  readonly job?: string | undefined;
  readonly draftJob?: string | undefined;
  readonly out?: string | undefined;
  readonly allowOld?: boolean | undefined;
}

/** `prepare`: the work sheet of a pair, before a swap. */
export async function prepareFiles(
  paths: readonly string[],
  options: PrepareOptions,
  streams: Streams,
): Promise<Status> {
  const given = options.job === undefined ? null : await yamlAt(options.job);
  if (given !== null) readJob(given.file, given.text);
  const imported = await importAll(paths, options, streams, options.job);
  const { settings } = imported;
  const jobText = given ?? imported.job;
  const job = jobText === null ? null : readJob(jobText.file, jobText.text);
  const analysed = analyse(imported, limitsOf(settings), clocksOf(settings));
  const question = { now: Date.now(), allowOld: options.allowOld === true };
  const sheet = prepareSwap(analysed, options.pair ?? settings.pair, job, question);
  const zone = shownZone(settings.zone, sheet.inputs);
  if (options.draftJob !== undefined) await writeNew(options.draftJob, draftJob(sheet));
  const reports =
    options.out === undefined
      ? []
      : await writeReports(
          options.out,
          prepareReports(sheet, { zone, version: STEADYPAIR_VERSION }),
          imported.read,
        );
  const draft =
    options.draftJob === undefined
      ? ''
      : `\nJob draft: ${options.draftJob}. Fill it in and read it with --job.\n`;
  streams.stdout.write(
    options.json === true
      ? prepareJson(sheet)
      : prepareText(sheet, { zone, paint: painterFor(streams.stdout), reports }) + draft,
  );
  return statusOf(sheet);
}

/** 0 fit, 1 not fit, 3 not known. Source: design.md, section 8. */
function statusOf({ readiness: { fit } }: WorkSheet): Status {
  if (fit === null) return 3;
  return fit ? 0 : 1;
}
