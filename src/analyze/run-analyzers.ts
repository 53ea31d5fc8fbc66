import type { PairFacts } from '../timeline/facts.ts';
import type { Finding, PairAnswer } from '../vocabulary.ts';
import type { Analysis, Analyzer } from './analyzer.ts';
import type { Limits } from './limits.ts';
import { tellAnswers } from './tell-answers.ts';

/** What one analyzer said of one pair, or why it said nothing. */
export interface Answer {
  readonly analyzer: string;
  readonly question: string;
  readonly pair: string;
  readonly checked: number;
  readonly notObserved: number;
  /** A signal it needs was never logged of this pair. */
  readonly missing: readonly string[];
  /** It failed: a defect, told by name so that "no finding" never stands for "no answer". */
  readonly failed: string | null;
  readonly findings: readonly Finding[];
}

/** What one analyzer says of one pair before it is known what is asked of all others. */
export interface Asked extends Omit<Answer, 'findings'>, PairAnswer {}

/**
 * Runs every analyzer on every pair. One that throws does not stop the others: it is reported as failed. Questions of chance
 * share the significance over all pairs, each analyzer's own (Holm).
 */
export function runAnalyzers(
  analyzers: readonly Analyzer[],
  pairs: readonly PairFacts[],
  limits: Limits,
): readonly Answer[] {
  return answered(askAnalyzers(analyzers, pairs, limits), limits);
}

/** Runs every analyzer on every pair, pair by pair; what chance may have brought is asked, and not answered yet. */
export function askAnalyzers(
  analyzers: readonly Analyzer[],
  pairs: readonly PairFacts[],
  limits: Limits,
): readonly Asked[] {
  return pairs.flatMap((facts) => analyzers.map((analyzer) => runOne(analyzer, facts, limits)));
}

/** What was asked of all pairs, answered. */
export function answered(asked: readonly Asked[], { significance }: Limits): readonly Answer[] {
  const told = tellAnswers(asked, significance);
  return asked.map(({ questions: _questions, ...answer }, index) => ({
    ...answer,
    findings: told[index] ?? [],
  }));
}

function runOne(analyzer: Analyzer, facts: PairFacts, limits: Limits): Asked {
  const { id, question, needs } = analyzer.meta;
  const { pair, events } = facts.timeline;
  const missing = needs.filter((signal) => !events.some((e) => e.signal === signal));
  const frame = { analyzer: id, question, pair, missing };
  const nothing = { checked: 0, notObserved: 0, findings: [], questions: [], failed: null };
  if (missing.length > 0) return { ...frame, ...nothing };
  const outcome = attempt((): Analysis => analyzer.analyze(facts, limits));
  if (typeof outcome === 'string') return { ...frame, ...nothing, failed: outcome };
  return { ...frame, questions: [], ...outcome, failed: null };
}

function attempt<T>(run: () => T): T | string {
  try {
    return run();
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
