import { binomialAtMost } from './distributions.ts';
import type { Between } from './turnbull.ts';

/**
 * Limits of the value below which `share` of all lie, no matter what their distribution: two order statistics, the tail left
 * outside by each at most half of what `confidence` leaves. Of values known between bounds the lower ones make the lower
 * limit and the upper ones the upper; `null` where the sample is too small, or nothing that high was seen to end. What can
 * never end goes in as `Infinity` for both.
 * Source: Hahn and Meeker, Statistical Intervals (1991), section 5.2 (from memory).
 */
export function quantileLimits(
  values: readonly Between[],
  share: number,
  confidence = 0.95,
): { readonly low: number | null; readonly high: number | null } {
  const tail = (1 - confidence) / 2;
  const below = (rank: number): number => binomialAtMost(rank - 1, values.length, share);
  const ascending = (bound: keyof Between): readonly number[] =>
    values.map((value) => value[bound]).sort((a, b) => a - b);
  // The rank r of a lower limit fails where fewer than r values lie below the quantile; an upper one where r or more do.
  const low = ascending('low').findLast((_, index) => below(index + 1) <= tail);
  const high = ascending('high').find((_, index) => 1 - below(index + 1) <= tail);
  const seen = (value: number | undefined): number | null =>
    value === undefined || value === Number.POSITIVE_INFINITY ? null : value;
  return { low: seen(low), high: seen(high) };
}
