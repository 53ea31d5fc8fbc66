import type { SaidByBundles } from '../src/bundle/inside.ts';
import {
  type Analysed,
  analyse,
  attention,
  type FileSource,
  healthOfPairs,
  type Imported,
  type InputError,
  limitsWithHold,
  type PairHealth,
  swapsNow,
  teachAll,
  verify,
} from '../src/pipeline.ts';
import { rowsNotKnown } from '../src/report/not-known.ts';
import { inPage, statementInPage } from '../src/report/settings.ts';
import { shownZone } from '../src/report/shown-zone.ts';
import type { ImportedFile, Input, Job, SwapNow } from '../src/vocabulary.ts';
import { noticesOf } from './bundles-inside.ts';
import type { FileLines } from './lines-around.ts';
import type {
  FileModel,
  GivenModel,
  NamedText,
  NotUsed,
  OpenedSession,
  PairModel,
  Question,
  SiteModel,
} from './protocol.ts';
import { sessionText } from './session-file.ts';

/** Everything that was read, held where the page can ask for more of it. */
export interface SiteSession {
  /** Where lines are read back from, by the names of files and of members of archives. */
  readonly lines: ReadonlyMap<string, FileLines>;
  /** What was read: files, and members of archives. */
  readonly members: ReadonlyMap<string, FileSource>;
  readonly imported: Imported;
  /** What this program wrote itself. */
  readonly reports: readonly string[];
  readonly phrasebook: NamedText | null;
  readonly isAligned: boolean;
  readonly analysed: Analysed;
  /** What the bundles among the files say. */
  readonly said: SaidByBundles;
  /** What could not be opened or read as YAML, among the failures. */
  readonly notOpened: readonly InputError[];
  /** The job files, and what each says. */
  readonly jobTexts: readonly (NamedText & { readonly job: Job })[];
  readonly jobs: ReadonlyMap<string, Job>;
  readonly given: readonly GivenModel[];
  readonly sessions: readonly OpenedSession[];
}

type Ask<K extends Question['kind']> = Extract<Question, { readonly kind: K }>;

/** The session with the clocks of the files set right, or as they are. */
export function alignSite(session: SiteSession, isAligned: boolean): SiteSession {
  const { hold, reference } = session.said.settings;
  const analysed = analyse(session.imported, limitsWithHold(hold), { align: isAligned, reference });
  return { ...session, isAligned, analysed };
}

/** The session with another job for one pair. */
export function withJob(session: SiteSession, pair: string, job: Job | null): SiteSession {
  const jobs = new Map(session.jobs);
  if (job === null) jobs.delete(pair);
  else jobs.set(pair, job);
  return { ...session, jobs };
}

/** What the page shows of a session. */
export function siteModel(session: SiteSession): SiteModel {
  const { analysed, imported, reports, phrasebook, isAligned, said } = session;
  const spans = imported.files.map((f) => f.input);
  const rows = rowsByPair(analysed.files);
  const ends = (key: 'from' | 'to'): number[] => spans.flatMap((i) => i[key] ?? []);
  const pairs = healthOfPairs(analysed).map((health) => judged(session, health, rows));
  return {
    given: session.given,
    sessions: session.sessions,
    files: imported.files.map(fileModel),
    failures: [
      ...imported.failures.map(notUsed),
      ...reports.map((where) => ({
        where,
        what: 'this program wrote it.',
        fix: 'It is no log and was skipped.',
        kind: 'own-report' as const,
      })),
      ...noticesOf(said),
    ],
    pairs,
    attention: attention(
      analysed,
      pairs.flatMap((p) => p.verification.swaps),
    ),
    now: swapsNowOf(session),
    findings: [...analysed.findings, ...analysed.phrasebook].map((f) => ({
      ...f,
      statement: statementInPage(f),
    })),
    offsets: analysed.offsets,
    isAligned,
    zone: shownZone(said.settings.zone, spans),
    from: least(ends('from')),
    to: least(
      ends('to').map((t) => -t),
      -1,
    ),
    phrasebook,
  };
}

/** The pairs in work, each with its own job. */
function swapsNowOf({ analysed, jobs }: SiteSession): readonly SwapNow[] {
  return swapsNow(analysed, null, null).flatMap((now) => {
    const job = jobs.get(now.pair);
    return job === undefined ? now : swapsNow(analysed, now.pair, job);
  });
}

/** How one pair stands for a swap, in work or not; `null` where it is in none of the files. */
export function swapNow({ analysed, jobs }: SiteSession, pair: string): SwapNow | null {
  return swapsNow(analysed, pair, jobs.get(pair) ?? null)[0] ?? null;
}

function least(values: readonly number[], sign: 1 | -1 = 1): number | null {
  return values.length === 0 ? null : sign * Math.min(...values);
}

/** One pair of the session. Throws RangeError, a defect of the page, if it is in none of the files. */
export function pairModel(session: SiteSession, pair: string): PairModel {
  const health = healthOfPairs(session.analysed).find((h) => h.pair === pair);
  if (health === undefined) throw new RangeError(`No facts of ${pair}`);
  return judged(session, health, rowsByPair(session.analysed.files));
}

function judged(
  { analysed, jobs }: SiteSession,
  health: PairHealth,
  rows: ReadonlyMap<string, PairModel['rows']>,
): PairModel {
  const job = jobs.get(health.pair) ?? null;
  return {
    health,
    job,
    verification: verify(analysed, health.pair, { from: null, to: null }, job),
    rows: rows.get(health.pair) ?? rowsNotKnown([]),
  };
}

/** The rows of all files that name a pair. */
function rowsByPair(files: readonly ImportedFile[]): ReadonlyMap<string, PairModel['rows']> {
  const inputs = new Map<string, Input[]>();
  for (const { input, streams } of files)
    for (const pair of new Set(streams.map((s) => s.subject.pair))) {
      const known = inputs.get(pair);
      if (known === undefined) inputs.set(pair, [input]);
      else known.push(input);
    }
  return new Map([...inputs].map(([pair, own]) => [pair, rowsNotKnown(own)]));
}

/** A text that a person writes is refused; a log is left out. */
function notUsed({
  where,
  what,
  fix,
  setting,
}: (NotUsed & { readonly setting?: undefined }) | Imported['failures'][number]): NotUsed {
  const kind = /\.ya?ml(?::\d+)?$/i.test(where) ? 'refused' : 'left-out';
  return { where, what, fix: inPage(fix, setting), kind };
}

function fileModel(file: ImportedFile): FileModel {
  const { input, reasons, notices, streams, columns, parameters } = file;
  return {
    input,
    reasons,
    notices: notices.map((n) => ({ ...n, fix: inPage(n.fix, n.setting) })),
    // Units that no pair is known for stand among the wordings.
    units: streams.flatMap(({ unit, subject }) => (subject.pair === '' ? [] : [{ unit, subject }])),
    columns,
    parameters,
    unobserved: streams.flatMap(({ unit, gaps }) =>
      gaps.map(({ before, after }) => ({ unit, from: before.time, to: after.time })),
    ),
  };
}

/** The phrasebook with lessons in it. */
export function teach({ phrasebook }: SiteSession, { lessons }: Ask<'teach'>): string {
  return teachAll(phrasebook?.file ?? 'phrasebook.yaml', phrasebook?.text ?? null, lessons);
}

/** Everything as one file, named by its site or pair and the day its logs end. */
export function saveSite(
  { imported, analysed, reports, phrasebook, isAligned, jobs }: SiteSession,
  { page, saved, version }: Ask<'session'>,
  digest: (bytes: Uint8Array) => string,
): { readonly name: string; readonly text: string } {
  const named = { page, version, isAligned, phrasebook, jobs: Object.fromEntries(jobs), reports };
  const ends = imported.files.flatMap(({ input }) => input.to ?? []);
  const day = new Date(ends.length === 0 ? saved : Math.max(...ends)).toISOString().slice(0, 10);
  const sites = new Set(analysed.timelines.map(({ site }) => site));
  const [pair] = analysed.timelines;
  const [site] = sites.size === 1 ? sites : [];
  const of = site ?? (analysed.timelines.length === 1 ? pair?.pair : null) ?? 'pairs';
  const name = `${of.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-')}-${day}.steadypair-session.json`;
  return { name, text: sessionText({ imported, saved, ...named }, digest) };
}
