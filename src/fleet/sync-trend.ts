import { holm } from '../statistics/holm.ts';
import { mannKendall } from '../statistics/mann-kendall.ts';
import { theilSen } from '../statistics/theil-sen.ts';
import type { GroupReview, SyncTrend } from '../vocabulary.ts';
import { type FleetLimits, yearSeconds } from './limits.ts';
import { monthOf } from './months.ts';
import { monthMedians } from './tables.ts';

const yearMs = yearSeconds * 1000;

/**
 * Whether sync times rise over the months: the median of each month, so that a busy month counts once. A time known
 * between two bounds counts as their middle; one not seen to end, as long as it was watched, or it would hide a rise.
 * `null` for fewer months than `leastMonths`.
 */
export function syncTrend(
  times: readonly { readonly start: number; readonly low: number; readonly high: number }[],
  limits: FleetLimits,
): SyncTrend | null {
  const medians = monthMedians(
    times.map(({ start, low, high }) => ({
      month: monthOf(start),
      value: high === Number.POSITIVE_INFINITY ? low : (low + high) / 2,
    })),
  );
  const test = mannKendall(medians.map((m) => m.value));
  const found = theilSen(
    medians.map((m) => ({ time: m.time / yearMs, value: m.value })),
    limits.confidence,
  );
  if (medians.length < limits.leastMonths || test === null || found === null) return null;
  const { slope, low, high } = found;
  return { months: medians.length, secondsPerYear: { value: slope, low, high }, p: test.p };
}

/** The groups with the chances of their trends as they are with all groups looked at (Holm). */
export function sharedTrends(groups: readonly GroupReview[]): readonly GroupReview[] {
  const judged = groups.flatMap(({ trend }) => (trend === null ? [] : [trend]));
  const adjusted = holm(judged.map(({ p }) => p));
  const chances = new Map(judged.map((trend, index) => [trend, adjusted[index] ?? 1]));
  return groups.map((group) => {
    const { trend } = group;
    return trend === null ? group : { ...group, trend: { ...trend, p: chances.get(trend) ?? trend.p } };
  });
}
