import { normalBeyond, normalQuantileAt } from './distributions.ts';
import type { Counted } from './rate-ratio.ts';

/** Events over exposure under two conditions, within one stratum. */
export interface TwoRates {
  readonly first: Counted;
  readonly second: Counted;
}

/** The common ratio of the first rate to the second; limits are `null` where one of the rates is 0 in all strata. */
export interface CommonRatio {
  readonly ratio: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * The Mantel-Haenszel rate ratio of several strata with the limits of Greenland and Robins; `confidence` as 0.95. `null`
 * where no stratum has exposure under both conditions and an event. Source: Greenland and Robins, Estimation of a Common Effect Parameter
 * from Sparse Follow-up Data, Biometrics 41 (1985), section 2 (from memory).
 */
export function mantelHaenszel(strata: readonly TwoRates[], confidence: number): CommonRatio | null {
  let [first, second, variance] = [0, 0, 0];
  for (const { first: one, second: two } of strata) {
    const all = one.exposure + two.exposure;
    if (one.exposure <= 0 || two.exposure <= 0) continue;
    first += (one.count * two.exposure) / all;
    second += (two.count * one.exposure) / all;
    variance += ((one.count + two.count) * one.exposure * two.exposure) / all ** 2;
  }
  if (first + second === 0) return null;
  if (first === 0 || second === 0) return { ratio: second === 0 ? null : 0, low: null, high: null };
  const ratio = first / second;
  const factor = Math.exp(normalQuantileAt((1 + confidence) / 2) * Math.sqrt(variance / (first * second)));
  return { ratio, low: ratio / factor, high: ratio * factor };
}

/** Past so many events the exact sum takes too long, and the normal distribution is as good. */
const mostExact = 1000;

/**
 * The two-sided chance of so many of the events under the first condition, or as few, if in every stratum both rates were
 * the same: given its total, each event of a stratum is under the first with the share of the exposure. Exact up to a
 * thousand events, twice the smaller tail; of more by the normal distribution with continuity correction. 1 without an event. Source: Breslow and
 * Day, Statistical Methods in Cancer Research, volume II (1987), section 3.6 (from memory).
 */
export function stratifiedChance(strata: readonly TwoRates[]): number {
  const [found, all] = strata.reduce(
    ([own, total], { first, second }) => [own + first.count, total + first.count + second.count],
    [0, 0],
  );
  if (all > mostExact) return nearNormal(strata, found);
  // How likely each number of events under the first condition is, event by event.
  const chances = new Float64Array(all + 1);
  chances[0] = 1;
  let passed = 0;
  for (const { first, second } of strata) {
    const share = first.exposure / (first.exposure + second.exposure);
    for (let event = 0; event < first.count + second.count; event += 1) {
      passed += 1;
      for (let count = passed; count >= 0; count -= 1)
        chances[count] =
          (chances[count] ?? 0) * (1 - share) + (count === 0 ? 0 : (chances[count - 1] ?? 0) * share);
    }
  }
  const atMost = chances.slice(0, found + 1).reduce((sum, chance) => sum + chance, 0);
  const atLeast = chances.slice(found).reduce((sum, chance) => sum + chance, 0);
  return Math.min(1, 2 * Math.min(atMost, atLeast));
}

function nearNormal(strata: readonly TwoRates[], found: number): number {
  let [mean, variance] = [0, 0];
  for (const { first, second } of strata) {
    const count = first.count + second.count;
    const share = first.exposure / (first.exposure + second.exposure);
    mean += count * share;
    variance += count * share * (1 - share);
  }
  return normalBeyond(Math.max(0, Math.abs(found - mean) - 1 / 2) / Math.sqrt(variance));
}
