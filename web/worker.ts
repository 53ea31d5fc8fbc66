/// <reference lib="webworker" />
import { diagnose, fleet, InputError } from '../src/pipeline.ts';
import { inPage } from '../src/report/settings.ts';
import type { Answers, Question, Reply, SurveyModel } from './protocol.ts';
import { readLines } from './site-lines.ts';
import {
  alignSite,
  pairModel,
  readSite,
  type SiteSession,
  siteModel,
  teach,
  withJob,
} from './site-session.ts';
import { previewSite, surveySite, trySite, trySiteStamps, tryTable } from './site-survey.ts';

/** How often progress is told, in milliseconds. */
const progressMs = 100;

/** Answers questions one after the other; what was read is held between them. */
function serve(): void {
  let session: SiteSession | null = null;
  let survey: Promise<SurveyModel> | null = null;
  const answer = async (question: Question): Promise<Answers[keyof Answers]> => {
    if (question.kind === 'read') session = await readSite(question, progressTeller());
    if (session === null) throw new RangeError('Nothing was read yet.');
    if (question.kind === 'align') session = alignSite(session, question.isAligned);
    if (question.kind === 'judge') session = withJob(session, question.pair, question.job);
    if (isOfSurvey(question)) {
      survey ??= surveySite(session);
      return answerBySurvey(session, await survey, question);
    }
    return answerFrom(session, question);
  };
  self.addEventListener('message', ({ data }: MessageEvent<{ number: number; question: Question }>) => {
    const { number, question } = data;
    answer(question).then(
      (value) => reply({ kind: 'answer', number, value }),
      (error: unknown) => reply(failure(number, error)),
    );
  });
}

type OfSurvey = Extract<Question, { readonly kind: 'survey' | 'preview' | 'stamps' }>;

function isOfSurvey(question: Question): question is OfSurvey {
  const { kind } = question;
  return kind === 'survey' || kind === 'preview' || kind === 'stamps';
}

function answerBySurvey(
  session: SiteSession,
  survey: SurveyModel,
  question: OfSurvey,
): SurveyModel | Answers['preview'] | Answers['stamps'] {
  switch (question.kind) {
    case 'survey':
      return survey;
    case 'preview':
      return previewSite(session, survey, question);
    case 'stamps':
      return trySiteStamps(session, survey, question);
  }
}

async function answerFrom(
  session: SiteSession,
  question: Exclude<Question, OfSurvey>,
): Promise<Answers[keyof Answers]> {
  switch (question.kind) {
    case 'read':
    case 'align':
      return siteModel(session);
    case 'judge':
      return pairModel(session, question.pair);
    case 'diagnose':
      return diagnose(session.analysed, question.pair);
    case 'fleet':
      return fleet(session.analysed, question.question);
    case 'lines':
      return readLines(session.lines, question.cited, question.reach);
    case 'teach':
      return teach(session, question);
    case 'try':
      return trySite(session, question);
    case 'columns':
      return tryTable(session, question);
  }
}

function progressTeller(): (file: string, bytes: number, rows: number) => void {
  let told = 0;
  return (file, bytes, rows) => {
    const now = performance.now();
    if (bytes > 0 && now - told < progressMs) return;
    told = now;
    reply({ kind: 'progress', file, bytes, rows });
  };
}

function reply(message: Reply): void {
  self.postMessage(message);
}

/** What a person can mend is said as such; anything else is a defect. */
function failure(number: number, error: unknown): Reply {
  if (error instanceof InputError) {
    const { where, what, fix, setting } = error;
    return { kind: 'refused', number, refusal: { where, what, fix: inPage(fix, setting) } };
  }
  return { kind: 'defect', number, what: error instanceof Error ? error.message : String(error) };
}

serve();
