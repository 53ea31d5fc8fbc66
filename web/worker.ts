/// <reference lib="webworker" />
import type { BundleToPack } from '../src/bundle/prepare-bundle.ts';
import { diagnose, fleet, InputError } from '../src/pipeline.ts';
import { inPage } from '../src/report/settings.ts';
import { type GivenStore, givenStore } from './given-store.ts';
import { digester } from './hasher.ts';
import type { Answers, Question, ReadingNews, Reply, Request, SurveyModel } from './protocol.ts';
import type { Tell } from './read-from.ts';
import { readSite } from './read-site.ts';
import { bundleOf } from './site-bundle.ts';
import { readLines } from './site-lines.ts';
import {
  alignSite,
  pairModel,
  type SiteSession,
  saveSite,
  siteModel,
  swapNow,
  teach,
  withJob,
} from './site-session.ts';
import { previewSite, surveySite, trySite, trySiteStamps, tryTable } from './site-survey.ts';

/** How often progress is told, in milliseconds. */
const progressMs = 100;

/** What was read, and what was looked through of it. */
interface Held {
  site: SiteSession;
  survey: Promise<SurveyModel> | null;
  /** A bundle that wants its reports. */
  bundle: BundleToPack | null;
}

/** Thrown where a person ended a reading. */
class Stopped extends Error {}

/** Answers questions about readings; each is held until it is closed. Files are read by one reading at a time. */
function serve(): void {
  const files = filesAsked();
  const store = givenStore(files.ask);
  const readings = new Map<number, Held>();
  const stopped = new Set<number>();
  let last: Promise<unknown> = Promise.resolve();
  const read = async ({ number, reading, question }: Asked<'read'>): Promise<Answers['read']> => {
    const before = last;
    const own = before.then(() => readUnless(() => stopped.has(number), number, question, store));
    last = own.catch(() => undefined);
    const site = await own;
    readings.set(reading, { site, survey: null, bundle: null });
    return siteModel(site);
  };
  self.addEventListener('message', ({ data }: MessageEvent<Request>) => {
    if (data.kind === 'stop') stopped.add(data.number);
    else if (data.kind === 'close') readings.delete(data.reading);
    else if (data.kind === 'file') files.answer(data.id, data.file);
    else {
      const { number, reading, question } = data;
      const value =
        question.kind === 'read'
          ? read({ number, reading, question })
          : answer(readings.get(reading), question);
      value.then(
        (found) => reply({ kind: 'answer', number, value: found }),
        (error: unknown) => error instanceof Stopped || reply(failure(number, error)),
      );
    }
  });
}

/** Asks the page for files as they are at this moment; of one that is asked for twice at once the answer is one. */
function filesAsked(): {
  readonly ask: GivenStore['fileNow'];
  readonly answer: (id: number, file: File | null) => void;
} {
  const waiting = new Map<number, ((file: File | null) => void)[]>();
  return {
    ask: (id) =>
      new Promise((resolve) => {
        const others = waiting.get(id);
        if (others !== undefined) others.push(resolve);
        else {
          waiting.set(id, [resolve]);
          reply({ kind: 'changed', file: id });
        }
      }),
    answer(id, file) {
      for (const resolve of waiting.get(id) ?? []) resolve(file);
      waiting.delete(id);
    },
  };
}

interface Asked<K extends Question['kind']> {
  readonly number: number;
  readonly reading: number;
  readonly question: Extract<Question, { readonly kind: K }>;
}

/** Reads the files until that is stopped: then it throws Stopped. */
async function readUnless(
  isStopped: () => boolean,
  number: number,
  question: Asked<'read'>['question'],
  store: GivenStore,
): Promise<SiteSession> {
  const tell = newsTeller(number);
  const goOn: Tell = (news) => {
    if (isStopped()) throw new Stopped();
    tell(news);
  };
  const site = await readSite(question, store, goOn);
  // Whoever stops it while the timelines are built is heard only now.
  await new Promise((resolve) => setTimeout(resolve, 0));
  if (isStopped()) throw new Stopped();
  return site;
}

type OfSurvey = Extract<Question, { readonly kind: 'survey' | 'preview' | 'stamps' }>;

function isOfSurvey(question: Question): question is OfSurvey {
  const { kind } = question;
  return kind === 'survey' || kind === 'preview' || kind === 'stamps';
}

function answerBySurvey(
  site: SiteSession,
  survey: SurveyModel,
  question: OfSurvey,
): SurveyModel | Answers['preview'] | Answers['stamps'] {
  switch (question.kind) {
    case 'survey':
      return survey;
    case 'preview':
      return previewSite(site, survey, question);
    case 'stamps':
      return trySiteStamps(site, survey, question);
  }
}

async function answer(
  held: Held | undefined,
  question: Exclude<Question, { readonly kind: 'read' }>,
): Promise<Answers[keyof Answers]> {
  if (held === undefined) throw new RangeError('Nothing was read yet.');
  const { site } = held;
  if (isOfSurvey(question)) {
    held.survey ??= surveySite(site);
    return answerBySurvey(site, await held.survey, question);
  }
  switch (question.kind) {
    case 'align':
      held.site = alignSite(site, question.isAligned);
      return siteModel(held.site);
    case 'judge':
      held.site = withJob(site, question.pair, question.job);
      return pairModel(held.site, question.pair);
    case 'now':
      return swapNow(site, question.pair);
    case 'diagnose':
      return diagnose(site.analysed, question.pair);
    case 'fleet':
      return fleet(site.analysed, question.question);
    case 'lines':
      return readLines(site.lines, question.cited, question.reach);
    case 'session':
      return saveSite(site, question, await digester());
    case 'teach':
      return teach(site, question);
    case 'bundle':
      held.bundle = await bundleOf(site, question);
      return alone(held.bundle);
    case 'pack':
      return packed(held, question);
    case 'try':
      return trySite(site, question);
    case 'columns':
      return tryTable(site, question);
  }
}

/** What the page writes the reports of. */
function alone({ answer, zone }: BundleToPack): Answers['bundle'] {
  return answer.kind === 'verify'
    ? { answer: { kind: answer.kind, verification: answer.verification }, zone }
    : { answer: { kind: answer.kind, diagnosis: answer.diagnosis }, zone };
}

async function packed(
  held: Held,
  { documents }: Extract<Question, { readonly kind: 'pack' }>,
): Promise<Answers['pack']> {
  const { bundle } = held;
  held.bundle = null;
  if (bundle === null) throw new RangeError('No bundle was asked for.');
  return bundle.pack(documents);
}

/** Tells of bytes now and then, and of all else at once. */
function newsTeller(number: number): (news: ReadingNews) => void {
  let told = 0;
  let file = -1;
  return (news) => {
    const now = performance.now();
    if (news.kind === 'bytes') {
      if (news.file === file && now - told < progressMs) return;
      told = now;
      file = news.file;
    }
    reply({ kind: 'news', number, news });
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
