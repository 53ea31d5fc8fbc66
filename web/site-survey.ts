import {
  importFiles,
  type LessonPreview,
  previewOf,
  readPhrasebook,
  surveyFiles,
  teachAll,
  tryColumns,
  tryStamps,
} from '../src/pipeline.ts';
import { draftPhrasebook } from '../src/report/draft-phrasebook.ts';
import { rowsNotKnown } from '../src/report/not-known.ts';
import { inPage } from '../src/report/settings.ts';
import type { TriedStamps, TriedTable } from '../src/vocabulary.ts';
import { platform } from './browser-files.ts';
import type { Question, SurveyModel, Trial } from './protocol.ts';
import type { SiteSession } from './site-session.ts';

type Ask<K extends Question['kind']> = Extract<Question, { readonly kind: K }>;

const newRules = 'the new rules';

/** Reads the files of a session once more for all that they say, understood or not. */
export async function surveySite({ members, imported, phrasebook }: SiteSession): Promise<SurveyModel> {
  const survey = await surveyFiles([...members.values()], {
    files: imported.files,
    phrasebook: readPhrasebook(phrasebook?.file ?? 'built-in phrasebook', phrasebook?.text ?? null),
    order: null,
    year: null,
    now: new Date().getFullYear(),
  });
  return { ...survey, draft: draftPhrasebook(survey) };
}

/** What each of some lessons would do. */
export function previewSite(
  { phrasebook }: SiteSession,
  survey: SurveyModel,
  { lessons }: Ask<'preview'>,
): readonly LessonPreview[] {
  return previewOf(phrasebook?.text ?? null, lessons, survey.wordings);
}

/** Reads all files with some lessons, and counts. Throws InputError if one does not fit. */
export async function trySite({ members, phrasebook }: SiteSession, { lessons }: Ask<'try'>): Promise<Trial> {
  const read = await importFiles([...members.values()], {
    phrasebook: readPhrasebook(newRules, teachAll(newRules, phrasebook?.text ?? null, lessons)),
    zone: null,
    order: null,
    year: null,
    sha256: platform.sha256,
  });
  return {
    rows: rowsNotKnown(read.files.map(({ input }) => input)),
    leftOut: read.failures.map(({ where, what, fix, setting }) => ({
      where,
      what,
      fix: inPage(fix, setting),
    })),
  };
}

/** The first rows of a table, as some lessons would have them read. Throws InputError if one does not fit. */
export function tryTable(
  { members, phrasebook }: SiteSession,
  { file, lessons }: Ask<'columns'>,
): Promise<TriedTable | null> {
  const source = members.get(file);
  if (source === undefined) return Promise.resolve(null);
  const text = teachAll(newRules, phrasebook?.text ?? null, lessons);
  return tryColumns(source, readPhrasebook(newRules, text), new Date().getFullYear());
}

/** The first stamps of each file, as they would be read. Throws InputError for a zone that does not exist. */
export function trySiteStamps(
  { phrasebook }: SiteSession,
  { files }: SurveyModel,
  said: Ask<'stamps'>,
): readonly TriedStamps[] {
  return tryStamps(files, readPhrasebook(phrasebook?.file ?? newRules, phrasebook?.text ?? null), said);
}
