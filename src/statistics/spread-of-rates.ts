import { studentBeyond, studentWithin } from './distributions.ts';
import type { Counted } from './rate-ratio.ts';

/** A ratio of two rates with limits, and its two-sided chance if both were the same. */
export interface SpreadRatio {
  readonly low: number;
  readonly high: number;
  readonly p: number;
}

/**
 * The rate of some units over that of others where units differ by more than chance: the variance of each rate is that
 * between its own units, by Student's t on the logarithm; `confidence` as 0.95. `null` for fewer than two units on either side, or
 * where one side has no event or all of its units have the very same rate. Source: Lawless and Nadeau, Some Simple Robust Methods for the Analysis of Recurrent
 * Events, Technometrics 37 (1995), section 2, for a rate that is constant (from memory).
 */
export function ratioBySpread(
  first: readonly Counted[],
  second: readonly Counted[],
  confidence: number,
): SpreadRatio | null {
  const [one, two] = [rateOf(first), rateOf(second)];
  const error = Math.sqrt(one.relativeVariance + two.relativeVariance);
  if (first.length < 2 || second.length < 2 || !(error > 0 && error < Infinity)) return null;
  const degrees = first.length + second.length - 2;
  const difference = Math.log(one.rate / two.rate);
  const reach = studentWithin(confidence, degrees) * error;
  return {
    low: Math.exp(difference - reach),
    high: Math.exp(difference + reach),
    p: studentBeyond(difference / error, degrees),
  };
}

/** A rate with its variance over its square, from the spread of the units. */
function rateOf(units: readonly Counted[]): { readonly rate: number; readonly relativeVariance: number } {
  const count = units.reduce((sum, unit) => sum + unit.count, 0);
  const exposure = units.reduce((sum, unit) => sum + unit.exposure, 0);
  const rate = count / exposure;
  const squares = units.reduce((sum, unit) => sum + (unit.count - rate * unit.exposure) ** 2, 0);
  return { rate, relativeVariance: (squares / count ** 2) * (units.length / (units.length - 1)) };
}
