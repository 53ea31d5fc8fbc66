import { bySeverity } from './analyze/by-severity.ts';
import { farStamps } from './analyze/far-stamps.ts';
import { failureFinding, noticesOf, offsetFindings } from './analyze/notices.ts';
import { strayStamps } from './analyze/stray-stamps.ts';
import { tellAnswers } from './analyze/tell-answers.ts';
import type { BriefSite } from './brief-figures.ts';
import { lossMonths } from './fleet/months.ts';
import { type FleetQuestion, reviewFleet } from './fleet/review-fleet.ts';
import { pairsInOrder, withCommonNames } from './joined-figures.ts';
import type { Limits } from './limits.ts';
import { renamedBrief, renamedPair } from './renamed-figures.ts';
import type {
  FailureFigures,
  FileFigures,
  Finding,
  Fleet,
  FleetInBrief,
  Input,
  PairAnswer,
  PairFigures,
  SiteFigures,
} from './vocabulary.ts';

/** How the figures of several sites are reviewed. */
export interface SitesQuestion extends FleetQuestion {
  readonly limits: Limits;
  /** Clocks were set right. */
  readonly align: boolean;
  /** Where a file of one of the sites stands among all files, the lowest first; without it, in the order of the sites. */
  readonly placeOf?: (input: Input, site: number) => number;
}

/**
 * Compares all pairs of some sites with each other, and their bring-ups in groups. It rests on nothing but the figures: whether
 * they were made just now or read back makes no difference. The order of the sites is that of the files.
 */
export function reviewSites(sites: readonly SiteFigures[], question: SitesQuestion): Fleet {
  const { limits, align } = question;
  const named = withCommonNames(sites, renamedPair);
  const pairs = pairsInOrder(named);
  const files = filesInOrder(named, question.placeOf);
  const findings = findingsOf(
    { files, pairs, failures: named.flatMap((site) => site.failures) },
    limits,
    align,
  );
  return {
    inputs: files.map((file) => file.input),
    ...reviewFleet(pairs, findings, question, limits.rules, limits.fleet),
    attempts: pairs.flatMap((pair) => pair.bringUps),
    months: lossMonths(pairs),
    findings,
  };
}

/** The same in brief: all that is said of it is said of the whole. */
export function reviewInBrief(sites: readonly BriefSite[], question: SitesQuestion): FleetInBrief {
  const { limits, align } = question;
  const named = withCommonNames(sites, renamedBrief);
  const pairs = pairsInOrder(named);
  const files = filesInOrder(named, question.placeOf);
  const failures = named.flatMap((site) => site.failures);
  const review = reviewFleet(pairs, [], question, limits.rules, limits.fleet);
  const outstanding = new Set(review.pairs.flatMap((p) => (p.standsOut === true ? [p.pair] : [])));
  return {
    ...review,
    inputs: files.map((file) => file.input),
    months: lossMonths(pairs.filter(({ pair }) => outstanding.has(pair))),
    findings: [...findingsOfFiles({ files, failures }, align)].sort(bySeverity),
  };
}

function filesInOrder(
  sites: readonly Pick<SiteFigures, 'files'>[],
  placeOf: SitesQuestion['placeOf'],
): readonly FileFigures[] {
  const placed = sites.flatMap((site, index) =>
    site.files.map((file) => ({ file, place: placeOf?.(file.input, index) ?? 0 })),
  );
  return placed.sort((a, b) => a.place - b.place).map(({ file }) => file);
}

/** What was found: the worst first, then by pair and time. */
function findingsOf(
  found: {
    readonly files: readonly FileFigures[];
    readonly failures: readonly FailureFigures[];
    readonly pairs: readonly Pick<PairFigures, 'answers'>[];
  },
  { significance }: Limits,
  align: boolean,
): readonly Finding[] {
  const answers: readonly PairAnswer[] = found.pairs.flatMap((pair) => pair.answers);
  return [...tellAnswers(answers, significance).flat(), ...findingsOfFiles(found, align)].sort(bySeverity);
}

/** What is told of files, and of those that could not be read. */
export function findingsOfFiles(
  {
    files,
    failures,
  }: { readonly files: readonly FileFigures[]; readonly failures: readonly FailureFigures[] },
  align: boolean,
): readonly Finding[] {
  return [
    ...noticesOf(files),
    ...farStamps(files),
    ...strayStamps(files),
    ...offsetFindings(files, align),
    ...failures.map(failureFinding),
  ];
}
