import type { PairFacts } from '../timeline/facts.ts';
import type { ChanceQuestion, Finding, Signal } from '../vocabulary.ts';
import type { Limits } from './limits.ts';

/** What one analyzer says of one pair: also how many cases it looked at, and how many it could not judge. */
export interface Analysis {
  readonly checked: number;
  readonly notObserved: number;
  readonly findings: readonly Finding[];
  /** What chance may have brought: told only if it holds among all that is asked of all pairs. */
  readonly questions?: readonly ChanceQuestion[];
}

export interface Analyzer {
  readonly meta: {
    readonly id: string;
    readonly question: string;
    /** Signals without which nothing can be said. */
    readonly needs: readonly Signal[];
    /** Every finding id it can report. */
    readonly findings: readonly string[];
  };
  analyze(facts: PairFacts, limits: Limits): Analysis;
}
