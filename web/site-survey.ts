import { type LessonPreview, previewOf, readPhrasebook, surveyFiles } from '../src/pipeline.ts';
import { draftPhrasebook } from '../src/report/draft-phrasebook.ts';
import type { Question, SurveyModel } from './protocol.ts';
import type { SiteSession } from './site-session.ts';

type Ask<K extends Question['kind']> = Extract<Question, { readonly kind: K }>;

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

/** What the last of some lessons would do. Throws InputError if one does not fit. */
export function previewSite(
  { phrasebook }: SiteSession,
  survey: SurveyModel,
  { lessons }: Ask<'preview'>,
): LessonPreview {
  return previewOf(phrasebook?.text ?? null, lessons, survey.wordings);
}
