import { analyzers } from './analyze/analyzers.ts';
import { type Limits as AnalyzeLimits, defaultLimits as analyzeLimits } from './analyze/limits.ts';
import { noticesOf, offsetFindings } from './analyze/notices.ts';
import { type Answer, runAnalyzers } from './analyze/run-analyzers.ts';
import { causes } from './diagnose/causes.ts';
import { sayChoice, worstOf } from './diagnose/choose-pair.ts';
import { diagnosePair } from './diagnose/diagnose-pair.ts';
import { type DiagnoseLimits, defaultDiagnoseLimits } from './diagnose/limits.ts';
import { fleetOf, troubleOf } from './diagnose/trouble.ts';
import { defaultFleetLimits, type FleetLimits } from './fleet/limits.ts';
import { type FleetQuestion, reviewFleet } from './fleet/review-fleet.ts';
import { InputError } from './import/bytes/input-error.ts';
import type { Imported } from './import/import-files.ts';
import { alignClocks, withoutDisagreeing } from './timeline/align-clocks.ts';
import { buildTimeline } from './timeline/build-timeline.ts';
import { type ClockOffset, clockOffsets } from './timeline/clock-offsets.ts';
import { factsOf, type PairFacts } from './timeline/facts.ts';
import { healthOf, type PairHealth } from './timeline/health.ts';
import { pairsBySite } from './timeline/sites.ts';
import { checks } from './verify/checks.ts';
import { findSwaps, type SwapFilter } from './verify/find-swaps.ts';
import { defaultVerifyLimits, type VerifyLimits } from './verify/limits.ts';
import { verifySwap } from './verify/verify-swap.ts';
import {
  compareText,
  type Diagnosis,
  type Finding,
  type Fleet,
  type ImportedFile,
  type Job,
  type PairTimeline,
  type Severity,
  type Verification,
} from './vocabulary.ts';

export type { FleetQuestion } from './fleet/review-fleet.ts';
export { DamagedEnd, eachChunk } from './import/bytes/damaged-end.ts';
export type { FileSource, Hasher, Platform, StoredFile } from './import/bytes/file-source.ts';
export { InputError } from './import/bytes/input-error.ts';
export { isNoLog } from './import/bytes/no-logs.ts';
export { unpackFiles } from './import/bytes/unpack.ts';
export { readTime } from './import/clock/read-time.ts';
export { type Imported, importFiles } from './import/import-files.ts';
export { readJob } from './import/job.ts';
export type { DescribedLayouts } from './import/layouts/describe-layouts.ts';
export { exactPattern, type Lesson } from './import/phrasebook/teach-phrasebook.ts';
export { readPhrasebook, rowsTaught, teachPhrasebook } from './import/read-phrasebook.ts';
export type { ClockOffset } from './timeline/clock-offsets.ts';
export type { Mark, PairHealth } from './timeline/health.ts';

/** The limits of every stage. They travel with what was analysed by them, so that no later stage can go by others. */
export interface Limits extends AnalyzeLimits {
  readonly verify: VerifyLimits;
  readonly diagnose: DiagnoseLimits;
  readonly fleet: FleetLimits;
}

const defaultLimits: Limits = {
  ...analyzeLimits,
  verify: defaultVerifyLimits,
  diagnose: defaultDiagnoseLimits,
  fleet: defaultFleetLimits,
};

/** Everything the files say: timelines, the facts of each pair, what the analyzers answered, and the findings. */
export interface Analysed {
  readonly limits: Limits;
  readonly files: readonly ImportedFile[];
  readonly timelines: readonly PairTimeline[];
  readonly facts: readonly PairFacts[];
  readonly answers: readonly Answer[];
  readonly findings: readonly Finding[];
  readonly offsets: readonly ClockOffset[];
}

/** What to do about clocks that disagree; `reference` names the file whose clock counts. */
export interface Clocks {
  readonly align: boolean;
  readonly reference: string | null;
}

/** Builds the timelines and runs every analyzer. Findings: the worst first, then by pair and time. */
export function analyse(
  imported: Imported,
  limits: Limits = defaultLimits,
  clocks: Clocks = { align: false, reference: null },
): Analysed {
  const { failures } = imported;
  const { files, offsets, timelines } = timelinesOf(imported, limits, clocks);
  const facts = factsOf(timelines, limits.rules);
  const answers = runAnalyzers(analyzers, facts, limits);
  const findings = [
    ...answers.flatMap((a) => a.findings),
    ...noticesOf(files),
    ...offsetFindings(offsets, clocks.align),
    ...failures.map(unreadable),
  ].sort(bySeverity);
  return { limits, files, timelines, facts, answers, findings, offsets };
}

/** Builds the timelines, and nothing that rests on them. */
export function timelinesOf(
  { files: imported }: Imported,
  { rules }: Limits,
  clocks: Clocks,
): Pick<Analysed, 'files' | 'offsets' | 'timelines'> {
  const files = pairsBySite(imported);
  const offsets = clockOffsets(files, clocks.reference, rules);
  const agreeing = clocks.align ? alignClocks(files, offsets) : withoutDisagreeing(files, offsets);
  return { files, offsets, timelines: buildTimeline(agreeing, rules) };
}

/** A file that could not be used: the loss is told with the results. */
function unreadable({ where, what, fix, kind }: InputError): Finding {
  const [, file = where, line = '1'] = /^(.*?)(?::(\d+))?$/.exec(where) ?? [];
  return {
    id: kind,
    severity: 'warning',
    pair: null,
    half: null,
    from: null,
    to: null,
    statement: `${where}: ${what} It was left out. ${fix}`,
    figures: {},
    evidence: [{ file, line: Number(line), text: '' }],
  };
}

const severityRank: Readonly<Record<Severity, number>> = { critical: 0, warning: 1, info: 2 };

function bySeverity(a: Finding, b: Finding): number {
  return (
    severityRank[a.severity] - severityRank[b.severity] ||
    compareText(a.pair ?? '', b.pair ?? '') ||
    (a.from ?? 0) - (b.from ?? 0)
  );
}

/** How every pair stands where its log ends. */
export function healthOfPairs({ facts, limits }: Analysed): readonly PairHealth[] {
  return facts.map((f) => healthOf(f, limits.rules));
}

/** Limits with another hold time, in seconds. */
export function limitsWithHold(holdSeconds: number | null): Limits {
  if (holdSeconds === null) return defaultLimits;
  return { ...defaultLimits, rules: { ...defaultLimits.rules, holdMs: holdSeconds * 1000 } };
}

/**
 * Verifies every swap that the logs show, of one pair or of all. Throws InputError if the pair is in none of the files.
 */
export function verify(
  analysed: Analysed,
  pair: string | null,
  filter: SwapFilter,
  job: Job | null,
): Verification {
  const { limits } = analysed;
  const wanted = pairsNamed(analysed, pair);
  const swaps = wanted.flatMap((facts) =>
    findSwaps(facts, filter, job, limits.verify, limits.rules).map((swap) => verifySwap(swap, checks)),
  );
  const names = new Set(wanted.map((f) => f.timeline.pair));
  return {
    inputs: analysed.files.map((f) => f.input),
    job,
    swaps,
    findings: analysed.findings.filter((f) => f.pair === null || names.has(f.pair)),
  };
}

/**
 * Diagnoses one pair, or the one that is worst now, against all the others. Throws InputError if the pair is in none of
 * the files, or if they speak of no pair.
 */
export function diagnose(analysed: Analysed, pair: string | null): Diagnosis {
  const { limits } = analysed;
  const fleet = fleetOf(analysed.facts, limits.rules);
  const candidates = pairsNamed(analysed, pair).map((facts) => ({
    facts,
    trouble: troubleOf(facts, fleet, limits.diagnose, limits.rules),
  }));
  const candidate = worstOf(candidates);
  if (candidate === null)
    throw new InputError(
      'diagnose',
      'the files speak of no pair.',
      'See how they were understood: steadypair inspect.',
    );
  const found = diagnosePair(candidate, fleet, causes, limits.diagnose, limits.rules);
  return {
    inputs: analysed.files.map((f) => f.input),
    chosen: pair === null ? sayChoice(candidate, candidates) : null,
    ...found,
    findings: analysed.findings.filter((f) => f.pair === null || f.pair === found.pair),
  };
}

/** Compares all pairs with each other, and their bring-ups in groups. */
export function fleet(analysed: Analysed, question: FleetQuestion): Fleet {
  const { facts, files, findings, limits } = analysed;
  return {
    inputs: files.map((f) => f.input),
    ...reviewFleet(facts, findings, question, limits.rules, limits.fleet),
    findings,
  };
}

/** The facts of one pair, or of all. Throws InputError, naming the pairs there are, if it is not among them. */
function pairsNamed({ facts }: Analysed, pair: string | null): readonly PairFacts[] {
  if (pair === null) return facts;
  const found = facts.filter((f) => f.timeline.pair === pair);
  if (found.length > 0) return found;
  const names = facts.map((f) => f.timeline.pair).join(', ');
  throw new InputError(
    `--pair ${pair}`,
    'no file speaks of that pair.',
    names === '' ? 'The files speak of no pair.' : `Choose one of ${names}.`,
  );
}
