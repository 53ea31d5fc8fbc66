import { analyse, InputError, surveyFiles } from '../pipeline.ts';
import { draftPhrasebook } from '../report/draft-phrasebook.ts';
import { foundDocument, foundText } from '../report/find-wordings.ts';
import { inspectJson, inspectText } from '../report/inspect.ts';
import type { Survey } from '../vocabulary.ts';
import {
  type CommonOptions,
  clocksOf,
  type ImportedFiles,
  importAll,
  importAny,
  limitsOf,
  type Status,
} from './command.ts';
import type { Streams } from './streams.ts';
import { writeNew } from './write-files.ts';

export interface InspectOptions extends CommonOptions {
  readonly draftPhrasebook?: string | undefined;
  readonly find?: string | undefined;
}

/**
 * `inspect`: how each file was understood; with `--find` the wordings that hold some words, with `--draft-phrasebook` also
 * a phrasebook to start from, for files of unknown layout too.
 */
export async function inspectFiles(
  paths: readonly string[],
  options: InspectOptions,
  streams: Streams,
): Promise<Status> {
  const { draftPhrasebook: draft, find } = options;
  const isSurveyed = draft !== undefined || find !== undefined;
  const imported = await (isSurveyed ? importAny : importAll)(paths, options, streams);
  const survey = isSurveyed ? await surveyOf(imported) : null;
  if (draft !== undefined && survey !== null) await writeNew(draft, draftPhrasebook(survey));
  streams.stdout.write(resultText(imported, survey, options));
  if (draft !== undefined && options.json !== true)
    streams.stdout.write(`\nPhrasebook draft: ${draft}. Fill it in and read again with --phrasebook.\n`);
  return 0;
}

/** All that the files say. Throws InputError where none of them is text with stamps. */
async function surveyOf({
  sources,
  files,
  phrasebook,
  settings: { order, year },
}: ImportedFiles): Promise<Survey> {
  const now = new Date().getUTCFullYear();
  const survey = await surveyFiles(sources, {
    files,
    phrasebook,
    order,
    year,
    now,
  });
  if (survey.files.length > 0) return survey;
  throw new InputError(
    'inspect',
    'no file has lines or rows with a timestamp.',
    'Export date and time with each row, as text or CSV.',
  );
}

function resultText(imported: ImportedFiles, survey: Survey | null, options: InspectOptions): string {
  const { files, settings } = imported;
  const { find, json } = options;
  const { findings, phrasebook, timelines } = analyse(imported, limitsOf(settings), clocksOf(settings));
  const ofData = [...findings.filter((f) => f.pair === null || f.id === 'unobserved'), ...phrasebook];
  const isFound = survey !== null && find !== undefined;
  if (json === true) return inspectJson(files, ofData, isFound ? foundDocument(survey, find) : undefined);
  return isFound ? foundText(survey, find) : inspectText(files, timelines, ofData);
}
