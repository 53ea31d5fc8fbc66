import gammaDistribution from '@stdlib/stats-base-dists-gamma-cdf';

/** The one door to the library of distribution functions: plain functions of numbers. */

/**
 * P[X >= count] for a Poisson count X with mean `expected`, 0 to 1; exact, also far out in the tail. `count` a whole number,
 * not negative; `expected` not negative. It is the chance that the first `count` arrivals of a Poisson process take less
 * than `expected` mean waits, a gamma distribution. Source: Johnson, Kemp and Kotz, Univariate Discrete Distributions
 * (2005), section 4.2 (from memory).
 */
export function poissonAtLeast(count: number, expected: number): number {
  if (count === 0) return 1;
  return expected === 0 ? 0 : gammaDistribution(expected, count, 1);
}

/**
 * P[X <= value] for a chi-square variable X with `degrees` of freedom, a gamma distribution of shape `degrees / 2` and
 * scale 2. `value` not negative, `degrees` positive.
 */
export function chiSquareAtMost(value: number, degrees: number): number {
  return gammaDistribution(value, degrees / 2, 1 / 2);
}
