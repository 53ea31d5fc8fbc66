import { betaQuantileAt, binomialAtMost } from './distributions.ts';

/** Events counted over some exposure, in any unit of time. */
export interface Counted {
  readonly count: number;
  readonly exposure: number;
}

/** All counts together, over all their exposure. */
export function together(counted: readonly Counted[]): Counted {
  return {
    count: counted.reduce((sum, { count }) => sum + count, 0),
    exposure: counted.reduce((sum, { exposure }) => sum + exposure, 0),
  };
}

/** The first rate over the second, with exact limits; `high` is `null` where it has no bound. */
export interface RateRatio {
  readonly ratio: number | null;
  readonly low: number;
  readonly high: number | null;
  /** Probability of so many of the events in the first, or more, if both rates were the same. */
  readonly p: number;
}

/**
 * Compares two Poisson rates exactly: given the total, the first count is binomial. Limits are those of Clopper and
 * Pearson for its share, turned into a ratio; `confidence` as 0.95. `null` without an event or without exposure.
 * Source: Przyborowski and Wilenski, Biometrika 31 (1940), from memory; the manual of R's poisson.test, Details.
 */
export function rateRatio(first: Counted, second: Counted, confidence: number): RateRatio | null {
  const total = first.count + second.count;
  if (total === 0 || first.exposure <= 0 || second.exposure <= 0) return null;
  const tail = (1 - confidence) / 2;
  const odds = second.exposure / first.exposure;
  const low = first.count === 0 ? 0 : betaQuantileAt(tail, first.count, second.count + 1);
  const high = second.count === 0 ? null : betaQuantileAt(1 - tail, first.count + 1, second.count);
  const share = first.exposure / (first.exposure + second.exposure);
  return {
    ratio: second.count === 0 ? null : (first.count / second.count) * odds,
    low: (low / (1 - low)) * odds,
    high: high === null ? null : (high / (1 - high)) * odds,
    p: atLeast(first.count, total, share),
  };
}

/** Probability of at least `successes` in `trials` of probability `probability` each: as many failures at most, exact far out. */
export function atLeast(successes: number, trials: number, probability: number): number {
  return successes <= 0 ? 1 : binomialAtMost(trials - successes, trials, 1 - probability);
}
