import { uniqueLines } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import { type ComparedPair, type FitnessReason, type PairReview, sayDuration } from '../vocabulary.ts';
import { fitnessFigures } from './fitness.ts';
import { lossFigures } from './pair-figures.ts';

/** What the fitness of a pair is judged by. */
type Standing = Pick<ComparedPair, 'from' | 'to' | 'losses' | 'fitness'>;

const mostLines = 20;

/**
 * Whether a pair is fit for a swap where its log ends, and why not. What was never logged cannot be promised: it is a
 * reason too, and where there are no others fitness is not known. The evidence is that of the reasons; of a fit pair what its readiness rests on. Source: design.md,
 * section 7, readiness.
 */
export function readinessForSwap(pair: Standing, readyMs: number): PairReview['readiness'] {
  const reasons = reasonsAgainstSwap(pair, readyMs);
  const [first, ...others] = reasons;
  const lines =
    first === undefined
      ? pair.fitness.ready
      : uniqueLines([...first.lines, ...others.flatMap((r) => r.lines)]);
  return {
    fit: fitFor(reasons),
    reasons: reasons.map((r) => r.said),
    evidence: lines.slice(0, mostLines),
  };
}

/** What the fitness of one pair is judged by, off its facts. */
export function standingOf(facts: PairFacts, rules: TimelineRules): Standing {
  const { from, to } = facts.timeline;
  return { from, to, losses: lossFigures(facts), fitness: fitnessFigures(facts, rules) };
}

/** Everything that speaks against a swap of a pair where its log ends, or must be known and is not. */
export function reasonsAgainstSwap(pair: Standing, readyMs: number): readonly FitnessReason[] {
  return [...notReady(pair, readyMs), ...pair.fitness.standing, ...unobservedBefore(pair, readyMs)];
}

/** Fit without a reason; where each only says what is not known, that is not known: `null`. */
export function fitFor(reasons: readonly FitnessReason[]): boolean | null {
  if (reasons.length === 0) return true;
  return reasons.every((r) => r.isUnknown) ? null : false;
}

function notReady({ to, losses, fitness }: Standing, readyMs: number): readonly FitnessReason[] {
  if (fitness.now !== null) return [fitness.now];
  const [first, ...others] = losses.filter((loss) => loss.time > to - readyMs);
  if (first === undefined) return [];
  const said = `It lost its ready partner within the last ${sayDuration(readyMs / 1000)}.`;
  return [{ said, lines: uniqueLines([...first.lines, ...others.flatMap((loss) => loss.lines)]) }];
}

function unobservedBefore({ from, to, fitness }: Standing, readyMs: number): readonly FitnessReason[] {
  const since = to - readyMs;
  if (from > since) {
    const said = `Its log covers only ${sayDuration((to - from) / 1000)}.`;
    return [{ said, isUnknown: true, lines: fitness.ends }];
  }
  const { lastGap } = fitness;
  if (lastGap === null || lastGap.to <= since) return [];
  const said = `It was not observed throughout the last ${sayDuration(readyMs / 1000)}.`;
  return [{ said, lines: lastGap.lines }];
}
