import type { PairFacts } from '../timeline/facts.ts';
import type { Finding } from '../vocabulary.ts';
import type { Analysis, Analyzer } from './analyzer.ts';
import type { Limits } from './limits.ts';

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

/** Runs every analyzer on every pair. One that throws does not stop the others: it is reported as failed. */
export function runAnalyzers(
  analyzers: readonly Analyzer[],
  pairs: readonly PairFacts[],
  limits: Limits,
): readonly Answer[] {
  return pairs.flatMap((facts) => analyzers.map((analyzer) => runOne(analyzer, facts, limits)));
}

function runOne(analyzer: Analyzer, facts: PairFacts, limits: Limits): Answer {
  const { id, question, needs } = analyzer.meta;
  const { pair, events } = facts.timeline;
  const missing = needs.filter((signal) => !events.some((e) => e.signal === signal));
  const frame = { analyzer: id, question, pair, missing };
  const nothing = { checked: 0, notObserved: 0, findings: [], failed: null };
  if (missing.length > 0) return { ...frame, ...nothing };
  const outcome = attempt(() => analyzer.analyze(facts, limits));
  return typeof outcome === 'string'
    ? { ...frame, ...nothing, failed: outcome }
    : { ...frame, ...outcome, failed: null };
}

function attempt(run: () => Analysis): Analysis | string {
  try {
    return run();
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
