import { poissonAtLeast } from './distributions.ts';
import { atLeast } from './rate-ratio.ts';

/** One unit against the rest, as expected if its rate were that of the rest. */
export interface Comparison {
  /** Events expected of the unit at the rate of the rest, above 0. */
  readonly own: number;
  /** Events expected of the rest, above 0. */
  readonly rest: number;
}

/**
 * The power of the exact one-sided comparison of two Poisson rates (`rateRatio`) at a level, as 0.05: how likely a unit
 * whose rate is `ratio` times that of the rest is found. Exact: summed over all counts of the rest that can be (to 1e-9).
 * Source: Przyborowski and Wilenski, Homogeneity of Results in Testing Samples from Poisson Series, Biometrika 31 (1940), section 5 (from memory).
 */
export function findingChance({ own, rest }: Comparison, ratio: number, level: number): number {
  const share = own / (own + rest);
  const reach = 7 * Math.sqrt(rest) + 20;
  const first = Math.max(0, Math.floor(rest - reach));
  let needed = Math.floor((first * own) / rest);
  let chance = 0;
  for (let others = first; others <= rest + reach; others += 1) {
    while (atLeast(needed, needed + others, share) > level) needed += 1;
    const weight = poissonAtLeast(others, rest) - poissonAtLeast(others + 1, rest);
    chance += weight * poissonAtLeast(needed, ratio * own);
  }
  return Math.min(1, chance);
}
