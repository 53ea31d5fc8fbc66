import type { PairFacts } from '../timeline/facts.ts';
import type { Finding, Signal } from '../vocabulary.ts';
import type { Limits } from './limits.ts';

/** What one analyzer says of one pair: also how many cases it looked at, and how many it could not judge. */
export interface Analysis {
  readonly checked: number;
  readonly notObserved: number;
  readonly findings: readonly Finding[];
  /** What chance may have brought: told only if it holds among all that is asked of all pairs. */
  readonly questions?: readonly Question[];
}

/** A question of chance. It is one only if its answer could hold at all; what it found is no reason to ask it or not. */
export interface Question {
  /** Chance of an answer as clear as this where there is nothing to find, 0 to 1. */
  readonly p: number;
  /** The finding, once it holds. */
  tell(shared: SharedChance): Finding;
}

/** What the chance of one answer comes to where many questions are asked. */
export interface SharedChance {
  /** Chance that any answer among all would be as clear if there were nothing to find. */
  readonly p: number;
  /** How many questions of this kind were asked of all pairs together. */
  readonly questions: number;
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
