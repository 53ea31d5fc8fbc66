import {
  analyse,
  type Imported,
  InputError,
  importFiles,
  limitsWithHold,
  planProblem,
} from '../src/pipeline.ts';
import type { ImportedFile, Job } from '../src/vocabulary.ts';
import { givenIn, insideOf } from './bundles-inside.ts';
import { type ByteCount, countBytes } from './count-bytes.ts';
import { phrasebookOf, sorted, type YamlText } from './given-files.ts';
import { givenModels } from './given-models.ts';
import { forgetOthers, type GivenStore, type OpenedFile, openGiven, phrasebookRead } from './given-store.ts';
import { digester, hasher } from './hasher.ts';
import { openHashers } from './open-hashers.ts';
import type { GivenFile } from './protocol.ts';
import type { ReadAsk, ReadFrom, Tell } from './read-from.ts';
import { withoutTwins } from './same-content.ts';
import { linesByFile } from './site-lines.ts';
import type { SiteSession } from './site-session.ts';

/**
 * Reads the files, one after the other; of those of earlier readings only what is touched by what changed. What cannot be read
 * is among the failures. Throws InputError if nothing but sessions is new, and none of them can be opened.
 */
export async function readSite(question: ReadAsk, store: GivenStore, tell: Tell): Promise<SiteSession> {
  const { texts: written, refused, logs } = await sorted(question.files);
  const count = countBytes(store, tell);
  try {
    const { opened, failures } = await openAll(store, logs, tell);
    const others = [...written, ...opened.flatMap(phrasebookIn)];
    const inside = insideOf(opened, others);
    const texts = [...inside.texts, ...others];
    const { phrasebook, unused } = phrasebookOf(texts, question.phrasebook);
    const from = { question, store, texts, opened, phrasebook, said: inside.said };
    const read = await importAll(from, { count, tell });
    tell({ kind: 'together' });
    const unpacked = opened.flatMap((o) => o.unpacked.failures);
    const notOpened = [...refused, ...failures, ...unpacked, ...unused];
    return await together({ ...from, notOpened }, { ...read, failures: [...notOpened, ...read.failures] });
  } finally {
    count.end();
  }
}

async function together(
  from: ReadFrom & Pick<SiteSession, 'notOpened'>,
  read: Imported,
): Promise<SiteSession> {
  const { question, store, texts, opened, phrasebook, said, notOpened } = from;
  const { hold, align, reference } = said.settings;
  const numbers = new Map(opened.map(({ given }) => [given.name, given.id]));
  const { files, twins } = withoutTwins(
    read.files.map((file) => asSaved(opened, file)),
    ({ input }) => numbers.get(givenIn(input, opened)) ?? 0,
  );
  const isAligned =
    question.isAligned ?? (align || opened.some(({ session }) => session?.isAligned === true));
  const analysed = analyse({ ...read, files }, limitsWithHold(hold), { align: isAligned, reference });
  const jobs = texts.flatMap(({ job }) => job ?? []);
  const misfits = jobs.flatMap((job) => planProblem(analysed, job) ?? []);
  const imported = { ...read, files, failures: [...read.failures, ...misfits] };
  const sources = opened.flatMap(({ unpacked }) => unpacked.sources);
  const indexes = new Map(opened.map(({ given, index }) => [given.name, index]));
  const here = opened.filter(({ session }) => session === null).map(({ given }) => given);
  forgetOthers(store, new Set([...question.files.map(({ id }) => id), ...question.remembered]));
  return {
    lines: linesByFile(here, opened.flatMap(filesHere), files, indexes, store.fileNow),
    members: new Map(sources.map((source) => [source.name, source])),
    imported,
    reports: opened.flatMap(({ unpacked }) => unpacked.reports),
    phrasebook,
    isAligned,
    analysed,
    said,
    notOpened,
    jobTexts: texts.flatMap(({ file, text, job }) => (job === null ? [] : [{ file, text, job }])),
    jobs: jobsOf(
      from,
      jobs.filter((job) => planProblem(analysed, job) === null),
      analysed.timelines.map((t) => t.pair),
    ),
    given: await givenModels(from, imported, twins),
    sessions: opened.flatMap(({ given: { id, name }, session }) =>
      session === null ? [] : [{ id, file: name, saved: session.saved, page: session.page }],
    ),
  };
}

/** Of a session none of the files is here. */
function filesHere({ session, unpacked }: OpenedFile): OpenedFile['unpacked']['sources'] {
  return session === null ? unpacked.sources : [];
}

/** Where a reading is told of. */
interface Telling {
  readonly count: ByteCount;
  readonly tell: Tell;
}

/** The logs and sessions opened; what cannot be is told and passed over. */
async function openAll(
  store: GivenStore,
  logs: readonly GivenFile[],
  tell: Tell,
): Promise<{ readonly opened: readonly OpenedFile[]; readonly failures: readonly InputError[] }> {
  const fresh = logs.filter(({ id }) => !store.opened.has(id)).length;
  const digest = await digester();
  const opened: OpenedFile[] = [];
  const failures: InputError[] = [];
  for (const given of logs) {
    try {
      opened.push(await openGiven(store, given, digest));
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      failures.push(error);
      tell({ kind: 'failure', failure: plainFailure(error) });
    }
  }
  const [first] = failures;
  if (first !== undefined && failures.length === fresh) throw first;
  return { opened, failures };
}

/** An error does not cross to the page. */
function plainFailure({ where, what, fix }: InputError): { where: string; what: string; fix: string } {
  return { where, what, fix };
}

async function importAll(
  { store, opened, phrasebook, said }: ReadFrom,
  { count, tell }: Telling,
): Promise<Imported> {
  const followed = new Set(opened.flatMap(({ growing }) => growing?.name ?? []));
  const fileOf = new Map(opened.flatMap(({ given, unpacked }) => unpacked.sources.map((s) => [s, given.id])));
  const hashers = openHashers();
  const { zone, order, year } = said.settings;
  try {
    return await importFiles([...fileOf.keys()], {
      phrasebook: phrasebookRead(store, phrasebook),
      zone,
      order,
      year,
      // That of a file that is followed goes on with the next reading.
      sha256: (of) => (followed.has(of.name) ? hasher() : hashers.open(of)),
      kept: store.kept,
      onKept: (kept) => {
        const known = new Set(kept);
        const whole = opened.filter(({ unpacked }) => unpacked.sources.every((s) => known.has(s)));
        tell({ kind: 'kept', files: whole.map(({ given }) => given.id) });
      },
      onFile: (source) => {
        hashers.close();
        count.begin(fileOf.get(source) ?? -1);
      },
      onProgress: (_, rows) => count.rows(rows),
      onFailure: (failure) => tell({ kind: 'failure', failure: plainFailure(failure) }),
    });
  } finally {
    hashers.close();
  }
}

/** A file of a session is told by the archive that it was in, not by the session. */
function asSaved(opened: readonly OpenedFile[], file: ImportedFile): ImportedFile {
  const { container, ...input } = file.input;
  const session = opened.find(
    ({ given, session: saved }) => saved !== null && given.name === container?.file,
  )?.session;
  const own = session?.inputs.find((one) => one.sha256 === input.sha256 && one.file === input.file);
  if (own === undefined) return file;
  return { ...file, input: own.container === undefined ? input : withContainer(input, own.container) };
}

/** In its place among the others, as a file that was read has it. */
function withContainer(
  { file, sha256, bytes, ...rest }: ImportedFile['input'],
  container: NonNullable<ImportedFile['input']['container']>,
): ImportedFile['input'] {
  return { file, sha256, bytes, container, ...rest };
}

function phrasebookIn({ session }: OpenedFile): readonly YamlText[] {
  const saved = session?.phrasebook ?? null;
  return saved === null ? [] : [{ ...saved, job: null }];
}

/** The job of each pair: what a session has, a job that plans for the pair, one that plans for none; what a person typed counts before. */
function jobsOf(
  { question, opened }: ReadFrom,
  jobs: readonly Job[],
  pairs: readonly string[],
): ReadonlyMap<string, Job> {
  const saved = opened.flatMap(({ session }) => (session === null ? [] : [session.jobs]));
  return new Map(
    pairs.flatMap((pair) => {
      const found =
        saved.find((all) => Object.hasOwn(all, pair))?.[pair] ??
        jobs.find(({ plan }) => plan !== undefined && Object.hasOwn(plan, pair)) ??
        jobs.find(({ plan }) => plan === undefined);
      const job = Object.hasOwn(question.jobs, pair) ? typedOver(found, question.jobs[pair] ?? null) : found;
      return job === undefined ? [] : [[pair, job] as const];
    }),
  );
}

/** The fields are those that a person typed; the plan, which has no field, is that of the file. */
function typedOver(found: Job | undefined, typed: Job | null): Job | undefined {
  const { file: _file, plan: _plan, ...fields } = typed ?? {};
  const planned = found?.plan === undefined ? {} : { file: found.file, plan: found.plan };
  const job = { ...planned, ...fields };
  return Object.keys(job).length === 0 ? undefined : job;
}
