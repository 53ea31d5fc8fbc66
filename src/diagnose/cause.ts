import type { PairFacts } from '../timeline/facts.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import type { Attempt, Gauge, NonEmpty, Point, Signal, SourceLine } from '../vocabulary.ts';
import type { DiagnoseLimits } from './limits.ts';
import type { Observation } from './observations.ts';

/** A pair in trouble as the logs show it: what the causes look at. */
export interface Trouble {
  readonly facts: PairFacts;
  /**
   * What is wrong now: no ready partner (where only presence is logged: no second module), one that comes and goes, a light that
   * was not steady in time and still is not, or that was steady and flashes again; or no log tells whether it is ready now.
   */
  readonly kind: 'not-ready' | 'flapping' | 'late-light' | 'light-again' | 'unknown';
  /** Every pair of the files, this one included. */
  readonly fleet: readonly PairFacts[];
  /** The half that does not come up; `null` where the logs do not say. */
  readonly half: string | null;
  /** From when there is trouble to the end of the log. */
  readonly from: number;
  readonly to: number;
  /** The line that began it and the last line read. */
  readonly evidence: NonEmpty<SourceLine>;
  /** The attempts since `from`, and those of them that came to nothing. */
  readonly attempts: readonly Attempt[];
  readonly failed: readonly Attempt[];
  /**
   * The trouble with the losses before it that followed each other closely, though the partner was ready in between: from the
   * first of them on, and the attempts since then that came to nothing. What comes and goes is counted over it.
   */
  readonly episode: { readonly from: number; readonly failed: readonly Attempt[] };
  /** The attempts of every pair of the files. */
  readonly allAttempts: readonly Attempt[];
  /** Every time a pair of the files was, or failed to become, ready. */
  readonly observations: readonly Observation[];
  readonly limits: DiagnoseLimits;
  readonly rules: TimelineRules;
}

/** What the logs say of one cause. Without anything for it, it is doubted; `decibans` is how strongly they speak for it. */
export interface Weighing {
  readonly decibans: number;
  readonly for: readonly Point[];
  readonly against: readonly Point[];
  /** What to check next, where that depends on what was read; else it is the cause's own. */
  readonly next?: string;
}

/** A cause that was weighed, or the signals without which it could not be. */
export interface Weighed {
  readonly cause: Cause;
  readonly missing: readonly string[];
  readonly weighing: Weighing;
}

export interface Cause {
  readonly meta: {
    readonly id: string;
    readonly title: string;
    /**
     * A `condition` is something to put right; a `place` is the module or slot that it goes with, which can be exchanged; a
     * `pattern` says how attempts fail, which both may bring about: where several are strong they come first in this order.
     * `neither` stands apart.
     */
    readonly kind: 'condition' | 'place' | 'pattern' | 'neither';
    /** What it would explain. */
    readonly explains: string;
    /** What would show it. */
    readonly shows: string;
    /** Signals without which nothing can be said of it: at least one of each list. */
    readonly needs: readonly NonEmpty<Signal | Gauge>[];
    /** What to check next, in words for a person at the cabinet. */
    readonly next: string;
  };
  /** `others`: what the causes before it in the list weighed. */
  weigh(trouble: Trouble, others: readonly Weighed[]): Weighing;
}

/** Nothing speaks for it; what speaks against, if anything. */
export function doubted(against: readonly Point[]): Weighing {
  return { decibans: 0, for: [], against };
}

/** No more than the logs can say. */
export function capped(decibans: number, { mostDecibans }: DiagnoseLimits): number {
  return Math.min(decibans, mostDecibans);
}
