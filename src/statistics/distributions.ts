import betaCdf from '@stdlib/stats-base-dists-beta-cdf';
import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import binomialCdf from '@stdlib/stats-base-dists-binomial-cdf';
import gammaDistribution from '@stdlib/stats-base-dists-gamma-cdf';
import gammaQuantile from '@stdlib/stats-base-dists-gamma-quantile';
import hypergeometricPmf from '@stdlib/stats-base-dists-hypergeometric-pmf';
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { gammaQuantileOfLarge, gammaTails } from './gamma-tails.ts';

/** The one door to the library of distribution functions: plain functions of numbers. */

/**
 * From here on the library's gamma distribution is that of a formula for values far above the mean, and near the mean off by up to
 * 2.5 % (0.3.1: 1001 or more of 1000.7 expected, 0.4874 for 0.5002): our own is taken well before.
 */
const large = { value: 900, shape: 100, quantileShape: 800 } as const;

function gammaAtMost(value: number, shape: number): number {
  return value >= large.value && shape >= large.shape
    ? gammaTails(value, shape).below
    : gammaDistribution(value, shape, 1);
}

/**
 * P[X >= count] for a Poisson count X with mean `expected`, 0 to 1; exact, also far out in the tail. `count` a whole number,
 * not negative; `expected` not negative. It is the chance that the first `count` arrivals of a Poisson process take less
 * than `expected` mean waits, a gamma distribution. Source: Johnson, Kemp and Kotz, Univariate Discrete Distributions
 * (2005), section 4.2 (from memory).
 */
export function poissonAtLeast(count: number, expected: number): number {
  if (count === 0) return 1;
  return expected === 0 ? 0 : gammaAtMost(expected, count);
}

/**
 * P[X <= value] for a chi-square variable X with `degrees` of freedom, a gamma distribution of shape `degrees / 2` and
 * scale 2. `value` not negative, `degrees` positive.
 */
export function chiSquareAtMost(value: number, degrees: number): number {
  return gammaAtMost(value / 2, degrees / 2);
}

/** Probability of exactly `marked` among `drawn`, drawn without return from `all` of which `allMarked` are marked. */
export function hypergeometric(marked: number, all: number, allMarked: number, drawn: number): number {
  return hypergeometricPmf(marked, all, allMarked, drawn);
}

/** Probability of at most `successes` in `trials` of probability `probability` each. */
export function binomialAtMost(successes: number, trials: number, probability: number): number {
  return binomialCdf(successes, trials, probability);
}

/** The value below which a beta variable of the two shapes lies with `probability`. */
export function betaQuantileAt(probability: number, first: number, second: number): number {
  return betaQuantile(probability, first, second);
}

/** Probability that a beta variable of the two shapes (positive) is at most `value`, 0 to 1. */
export function betaAtMost(value: number, first: number, second: number): number {
  return betaCdf(value, first, second);
}

/** The value below which a gamma variable of scale 1 and `shape` (positive) lies with `probability`. */
export function gammaQuantileAt(probability: number, shape: number): number {
  return shape >= large.quantileShape && probability > 0 && probability < 1
    ? gammaQuantileOfLarge(probability, shape)
    : gammaQuantile(probability, shape, 1);
}

/** The value below which a standard normal variable lies with `probability`. */
export function normalQuantileAt(probability: number): number {
  return normalQuantile(probability, 0, 1);
}

/**
 * How far from 0 a Student t variable of `degrees` of freedom (positive) lies at most with `confidence`, on either side. Given
 * t, `degrees / (degrees + t^2)` is a beta variable. Source: Johnson, Kotz and Balakrishnan, Continuous Univariate
 * Distributions, volume 2 (1995), section 28.2 (from memory).
 */
export function studentWithin(confidence: number, degrees: number): number {
  const share = betaQuantile(1 - confidence, degrees / 2, 1 / 2);
  return Math.sqrt((degrees * (1 - share)) / share);
}

/** Probability that a Student t variable lies at least as far from 0 as `value`, on either side: where `studentWithin` reaches it. */
export function studentBeyond(value: number, degrees: number): number {
  let [low, high] = [0, 1];
  for (let step = 0; step < 50; step += 1) {
    const beyond = (low + high) / 2;
    if (studentWithin(1 - beyond, degrees) > Math.abs(value)) low = beyond;
    else high = beyond;
  }
  return high;
}

/** Probability that a standard normal variable lies at least as far from 0 as `deviate`, on either side. */
export function normalBeyond(deviate: number): number {
  return Math.min(1, 2 * normalCdf(-Math.abs(deviate), 0, 1));
}
