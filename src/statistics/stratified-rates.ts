import { normalQuantileAt } from './distributions.ts';
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

/**
 * The two-sided chance of so many of the events under the first condition, or as few, if in every stratum both rates were
 * the same: given its total, each event of a stratum is under the first with the share of the exposure. Exact at any
 * count, twice the smaller tail. 1 without an event. Source: Breslow and Day, Statistical Methods in Cancer Research, volume II (1987),
 * section 3.6 (from memory).
 */
export function stratifiedChance(strata: readonly TwoRates[]): number {
  const found = strata.reduce((sum, { first }) => sum + first.count, 0);
  // How likely each number of events under the first condition is, event by event.
  let chances = [1];
  for (const { first, second } of strata) {
    const share = first.exposure / (first.exposure + second.exposure);
    for (let event = 0; event < first.count + second.count; event += 1) chances = withOneMore(chances, share);
  }
  const atMost = sumOf(chances.slice(0, found + 1));
  return Math.min(1, 2 * Math.min(atMost, sumOf(chances.slice(found))));
}

function withOneMore(chances: readonly number[], share: number): number[] {
  const next = new Array<number>(chances.length + 1).fill(0);
  for (const [count, chance] of chances.entries()) {
    next[count] = (next[count] ?? 0) + chance * (1 - share);
    next[count + 1] = chance * share;
  }
  return next;
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
