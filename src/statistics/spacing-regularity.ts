import { chiSquareAtMost } from './distributions.ts';

/** How evenly events follow each other. */
export interface Regularity {
  readonly mean: number;
  /** Coefficient of variation: 0 for a strict rhythm, about 1 for events by chance. */
  readonly variation: number;
  /** Chance that events which come by chance keep at least as even spacings. */
  readonly p: number;
}

/**
 * Are spacings more even than chance makes them? Events by chance have exponential spacings; the test compares the
 * arithmetic with the geometric mean, which are equal in a strict rhythm, and takes the lower tail. `spacings` not
 * negative, two at least; where one is 0 nothing is even. Source: Bartlett's M for exponential spacings, as in Moran,
 * The random division of an interval, part II, J. R. Stat. Soc. B 13 (1951) 147-150 (from memory): with n spacings,
 * 2 n (ln mean - mean ln) / (1 + (n + 1) / (6 n)) is nearly chi-square with n - 1 degrees of freedom.
 */
export function spacingRegularity(spacings: readonly number[]): Regularity {
  const count = spacings.length;
  const mean = average(spacings);
  const variance = spacings.reduce((sum, s) => sum + (s - mean) ** 2, 0) / (count - 1);
  const variation = Math.sqrt(variance) / mean;
  if (spacings.some((s) => s === 0)) return { mean, variation, p: 1 };
  const difference = Math.max(0, Math.log(mean) - average(spacings.map(Math.log)));
  const statistic = (2 * count * difference) / (1 + (count + 1) / (6 * count));
  return { mean, variation, p: chiSquareAtMost(statistic, count - 1) };
}

function average(values: readonly number[]): number {
  return values.reduce((sum, v) => sum + v, 0) / values.length;
}
