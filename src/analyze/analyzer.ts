import type { PairFacts } from '../timeline/facts.ts';
import type { Finding, Signal } from '../vocabulary.ts';
import type { Limits } from './limits.ts';

/** What one analyzer says of one pair: also how many cases it looked at, and how many it could not judge. */
export interface Analysis {
  readonly checked: number;
  readonly notObserved: number;
  readonly findings: readonly Finding[];
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
