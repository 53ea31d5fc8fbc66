import { InputError } from './import/bytes/input-error.ts';
import type { Limits } from './limits.ts';
import { noPairNamed, pairsNamed } from './pairs-named.ts';
import { planProblem } from './plan-problem.ts';
import { workSteps } from './procedure/work-steps.ts';
import { withHandTimes } from './sheet-steps.ts';
import type { PairFacts } from './timeline/facts.ts';
import { handTimes } from './timeline/hand-times.ts';
import {
  type Finding,
  type ImportedFile,
  type Job,
  mayConcern,
  type PairTimeline,
  type WorkSheet,
} from './vocabulary.ts';
import { type PrepareQuestion, sheetOf, troubleBefore } from './work-sheet.ts';

export type { PrepareQuestion } from './work-sheet.ts';

/** What a work sheet is made from. */
interface Analysed {
  readonly facts: readonly PairFacts[];
  readonly files: readonly ImportedFile[];
  readonly findings: readonly Finding[];
  readonly limits: Limits;
  readonly timelines: readonly PairTimeline[];
}

/**
 * The work sheet of one pair: the one that is named, else the only one, else the only one that the job plans. Throws InputError if that
 * settles none, or if the pair or what the job plans is in none of the files.
 */
export function prepareSwap(
  analysed: Analysed,
  pair: string | null,
  job: Job | null,
  question: PrepareQuestion,
): WorkSheet {
  const { facts: fleet, files, findings, limits } = analysed;
  const problem = planProblem(analysed, job);
  if (problem !== null) throw problem;
  const facts = pairToPrepare(analysed, pair, job);
  const { timeline } = facts;
  const plan = job?.plan?.[timeline.pair] ?? {};
  const steps = workSteps(facts, fleet, plan, timeline.to, limits.rules);
  return {
    inputs: files.map((f) => f.input),
    job,
    ...sheetOf(facts, plan, withHandTimes(steps, handTimes(fleet)), limits, question),
    trouble: troubleBefore(findings, timeline, limits),
    findings: findings.filter((f) => mayConcern(f, timeline.pair)),
  };
}

function pairToPrepare(analysed: Pick<Analysed, 'facts'>, pair: string | null, job: Job | null): PairFacts {
  const planned = Object.keys(job?.plan ?? {});
  const isOnly = analysed.facts.length === 1;
  const wanted = pair ?? (isOnly || planned.length !== 1 ? null : (planned[0] ?? null));
  const [found, second] = pairsNamed(analysed, wanted);
  if (found === undefined) throw noPairNamed('prepare');
  if (second === undefined) return found;
  const names = analysed.facts.map((f) => f.timeline.pair);
  throw new InputError(
    'prepare',
    `the files name ${names.length} pairs, and a work sheet is of one.`,
    `Choose one of ${names.join(', ')}.`,
  );
}
