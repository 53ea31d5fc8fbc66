import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import binomialCdf from '@stdlib/stats-base-dists-binomial-cdf';
import hypergeometricPmf from '@stdlib/stats-base-dists-hypergeometric-pmf';

/** The only door to the package of distribution functions: each with its own arguments, in the words of the project. */

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
