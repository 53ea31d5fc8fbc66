import { analyzers } from './analyze/analyzers.ts';
import { bySeverity } from './analyze/by-severity.ts';
import { fileFigures } from './analyze/file-figures.ts';
import { phrasebookFindings } from './analyze/notices.ts';
import { type Answer, answered, askAnalyzers } from './analyze/run-analyzers.ts';
import { attentionOf } from './attention.ts';
import { causes } from './diagnose/causes.ts';
import { sayChoice, worstOf } from './diagnose/choose-pair.ts';
import { diagnosePair } from './diagnose/diagnose-pair.ts';
import { fleetOf, troubleOf } from './diagnose/trouble.ts';
import type { FleetQuestion } from './fleet/review-fleet.ts';
import type { Imported } from './import/import-files.ts';
import { isPartial } from './import/is-partial.ts';
import { defaultLimits, type Limits } from './limits.ts';
import { noPairNamed, pairsNamed } from './pairs-named.ts';
import { planProblem } from './plan-problem.ts';
import { findingsOfFiles, reviewSites } from './review-sites.ts';
import { type Clocks, type ReadSite, siteFigures } from './site-figures.ts';
import { swapsOf } from './swaps-of.ts';
import { alignClocks } from './timeline/align-clocks.ts';
import { buildTimeline, timelinesInTurn } from './timeline/build-timeline.ts';
import { clockOffsets } from './timeline/clock-offsets.ts';
import { between } from './timeline/durations.ts';
import { factsOf } from './timeline/facts.ts';
import { healthOf, type PairHealth } from './timeline/health.ts';
import { pairsBySite } from './timeline/sites.ts';
import type { SwapFilter } from './verify/find-swaps.ts';
import {
  type Attention,
  type Diagnosis,
  type Finding,
  type Fleet,
  type Job,
  mayConcern,
  type PairTimeline,
  type SiteFigures,
  type Swap,
  type Verification,
} from './vocabulary.ts';

export { type BriefSite, briefly } from './brief-figures.ts';
export type { FleetQuestion } from './fleet/review-fleet.ts';
export { DamagedEnd, eachChunk } from './import/bytes/damaged-end.ts';
export type { FileSource, GrowingFile, Hasher, Platform, StoredFile } from './import/bytes/file-source.ts';
export { InputError } from './import/bytes/input-error.ts';
export { keptUnpacking } from './import/bytes/kept-unpacking.ts';
export { isNoLog } from './import/bytes/no-logs.ts';
export { unpackFiles } from './import/bytes/unpack.ts';
export { readTime } from './import/clock/read-time.ts';
export { surveyFiles } from './import/drafts/survey-files.ts';
export { tryColumns } from './import/drafts/try-columns.ts';
export { type SaidOfStamps, tryStamps } from './import/drafts/try-stamps.ts';
export { followedReadings } from './import/followed-readings.ts';
export { type Imported, importFiles } from './import/import-files.ts';
export { readJob } from './import/job.ts';
export { type KeptReadings, keptReadings } from './import/kept-readings.ts';
export type { DescribedLayouts } from './import/layouts/describe-layouts.ts';
export type { Phrasebook } from './import/phrasebook/phrasebook-rules.ts';
export type { LessonPreview } from './import/phrasebook/preview-lesson.ts';
export type { Lesson } from './import/phrasebook/teach-phrasebook.ts';
export { mostYaml, tooLargeYaml } from './import/phrasebook/yaml-file.ts';
export { previewOf, readPhrasebook, teachAll } from './import/read-phrasebook.ts';
export { readFigures } from './import/stored/figures.ts';
export { siteGroups } from './import/stored/site-groups.ts';
export { type StoredContent, storedContent } from './import/stored/stored-places.ts';
export { lastHour } from './last-hour.ts';
export { type Limits, limitsWithHold } from './limits.ts';
export { planProblem } from './plan-problem.ts';
export { type PrepareQuestion, prepareSwap } from './prepare-swap.ts';
export { runningClock } from './procedure/running-clock.ts';
export { type SitesGiven, withoutRepeated } from './repeated-figures.ts';
export { reviewInBrief, reviewSites, type SitesQuestion } from './review-sites.ts';
export type { Clocks } from './site-figures.ts';
export { swapsNow } from './swaps-now.ts';
export type { Mark, PairHealth } from './timeline/health.ts';

/** Everything the files say: timelines, the facts of each pair, what the analyzers answered, and the findings. */
export interface Analysed extends ReadSite {
  readonly timelines: readonly PairTimeline[];
  readonly answers: readonly Answer[];
  readonly findings: readonly Finding[];
  /** What is of no use in the phrasebook, for those who write it: no answer about a pair rests on it. */
  readonly phrasebook: readonly Finding[];
}

/** As printed, held against the first that counts. */
const usualClocks: Clocks = { align: false, reference: null };

/** Builds the timelines and runs every analyzer. Findings: the worst first, then by pair and time. */
export function analyse(
  imported: Imported,
  limits: Limits = defaultLimits,
  clocks: Clocks = usualClocks,
): Analysed {
  const asked = ask(imported, limits, clocks);
  const answers = answered(asked.asked, limits);
  const { files, offsets, failures } = asked;
  const findings = [
    ...answers.flatMap((a) => a.findings),
    ...findingsOfFiles({ files: fileFigures(files, offsets), failures }, clocks.align),
  ].sort(bySeverity);
  return { ...asked, answers, findings, phrasebook: phrasebookFindings(imported.phrasebookNotices ?? []) };
}

/** Builds the timelines and asks every analyzer of each pair. */
function ask(
  imported: Imported,
  limits: Limits,
  clocks: Clocks,
): Omit<Analysed, 'answers' | 'findings' | 'phrasebook'> {
  const { files, offsets, told, left } = clocked(imported, limits, clocks);
  const timelines = buildTimeline(told, left, limits.rules);
  const facts = factsOf(timelines, limits.rules);
  const asked = askAnalyzers(analyzers, facts, limits);
  return { limits, clocks, files, offsets, timelines, facts, asked, failures: imported.failures };
}

/** The figures of the pairs that were read together: what a fleet review takes of them. */
export function figuresOf(
  imported: Imported,
  limits: Limits = defaultLimits,
  clocks: Clocks = usualClocks,
): SiteFigures {
  return siteFigures(ask(imported, limits, clocks));
}

/** Builds the timelines, and nothing that rests on them: each when it is asked for. */
export function timelinesOf(imported: Imported, limits: Limits, clocks: Clocks): Iterable<PairTimeline> {
  const { told, left } = clocked(imported, limits, clocks);
  return timelinesInTurn(told, left, limits.rules);
}

/** The files, their pairs by site, and how far their clocks differ; what timelines are made of, and the offsets that these still have. */
function clocked(
  imported: Imported,
  { rules }: Limits,
  clocks: Clocks,
): Pick<Analysed, 'files' | 'offsets'> & {
  readonly told: Analysed['files'];
  readonly left: Analysed['offsets'];
} {
  const files = pairsBySite(imported.files);
  const offsets = clockOffsets(files, clocks.reference, rules);
  return clocks.align
    ? { files, offsets, told: alignClocks(files, offsets), left: [] }
    : { files, offsets, told: files, left: offsets };
}

/** How every pair stands where its log ends. */
export function healthOfPairs({ facts, limits }: Analysed): readonly PairHealth[] {
  return facts.map((f) => healthOf(f, limits.rules));
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
  const wanted = pairsNamed(analysed, pair);
  const problem = planProblem(analysed, job);
  if (problem !== null) throw problem;
  const swaps = wanted.flatMap((facts) => swapsOf(analysed, facts, filter, job));
  const absences = wanted.flatMap(({ timeline: { pair }, absences: own }) =>
    own.map(({ gone, back }) => ({
      pair,
      from: { time: gone.time, earliest: gone.earliest },
      lasted: back === null ? null : between(gone, back),
    })),
  );
  return {
    inputs: analysed.files.map((f) => f.input),
    job,
    swaps,
    ...(swaps.length > 0 || absences.length === 0 ? {} : { absences }),
    findings: analysed.findings.filter((f) => wanted.some((w) => mayConcern(f, w.timeline.pair))),
  };
}

/** All pairs in the order in which they need attention. `swaps`: those of all pairs where they were judged already. */
export function attention(
  analysed: Analysed,
  swaps: readonly Swap[] = analysed.facts.flatMap((facts) =>
    swapsOf(analysed, facts, { from: null, to: null }, null),
  ),
): readonly Attention[] {
  return attentionOf(analysed.facts, analysed.findings, swaps, analysed.limits);
}

/**
 * Diagnoses one pair, or the one that is worst now, against all the others. Throws InputError if the pair is in none of
 * the files, or if they speak of no pair.
 */
export function diagnose(analysed: Analysed, pair: string | null): Diagnosis {
  const { limits } = analysed;
  const ranked = pair === null ? attention(analysed) : [];
  const [facts] = pairsNamed(analysed, pair ?? worstOf(ranked));
  if (facts === undefined) throw noPairNamed('diagnose');
  const fleet = fleetOf(analysed.facts, limits.rules);
  const trouble = troubleOf(facts, fleet, limits.diagnose, limits.rules);
  const found = diagnosePair(
    { facts, trouble },
    fleet,
    causes,
    limits.diagnose,
    limits.rules,
    isPartial(analysed),
  );
  return {
    inputs: analysed.files.map((f) => f.input),
    chosen: pair === null ? sayChoice(found.pair, ranked) : null,
    ...found,
    findings: analysed.findings.filter((f) => mayConcern(f, found.pair)),
  };
}

/** Compares all pairs with each other, and their bring-ups in groups. */
export function fleet(analysed: Analysed, question: FleetQuestion): Fleet {
  const { limits, clocks } = analysed;
  return reviewSites([siteFigures(analysed)], { ...question, limits, align: clocks.align });
}
