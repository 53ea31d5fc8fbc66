import { indexFrom, seededRandom } from './seeded-random.ts';

/** How often to draw, from which seed, and how much the interval is to cover, as 0.9. */
export interface Resampling {
  readonly seed: number;
  readonly rounds: number;
  readonly confidence: number;
  /** Values to a draw; as many as the sample where not given. */
  readonly size?: number;
}

/** The middle of the drawn statistics and the interval; each `null` where too many draws had no figure. */
export interface Resampled {
  readonly median: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * The percentile interval of a statistic, over samples drawn with return: the same inputs give the same interval. A draw
 * without a figure (`null`, as a median not reached) counts as larger than all. `null` for an empty sample.
 * Source: Efron and Tibshirani, An Introduction to the Bootstrap (1993), section 13.3 (from memory).
 */
export function bootstrap<T>(
  sample: readonly T[],
  statistic: (drawn: readonly T[]) => number | null,
  { seed, rounds, confidence, size = sample.length }: Resampling,
): Resampled | null {
  if (sample.length === 0 || rounds < 1) return null;
  const next = seededRandom(seed);
  const draw = (): readonly T[] =>
    Array.from({ length: size }).flatMap(() => {
      const index = indexFrom(next(), sample.length);
      return sample.slice(index, index + 1);
    });
  const drawn = Array.from({ length: rounds }, () => statistic(draw()) ?? Infinity).sort((a, b) => a - b);
  return intervalOf(drawn, confidence);
}

function intervalOf(sorted: readonly number[], confidence: number): Resampled {
  const tail = (1 - confidence) / 2;
  return { median: ranked(sorted, 0.5), low: ranked(sorted, tail), high: ranked(sorted, 1 - tail) };
}

/** The least value that at least `share` of all do not exceed. */
function ranked(sorted: readonly number[], share: number): number | null {
  const value = sorted[Math.max(0, Math.ceil(share * sorted.length - 1e-9) - 1)];
  return value === undefined || !Number.isFinite(value) ? null : value;
}
