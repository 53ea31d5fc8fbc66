import { betaQuantileAt } from './distributions.ts';
import { firstThatHolds } from './first-that-holds.ts';
import type { Between } from './turnbull.ts';

/**
 * For any number of seconds the limits of the share still unfinished then: exact binomial limits, the lower one from
 * those that had not ended for certain, the upper one from those that may not have. Pointwise, no matter what the distribution;
 * 0 to 1 for no time at all. What can never end goes in as `Infinity` for both bounds. Sources: NIST/SEMATECH e-Handbook of Statistical Methods, section 7.2.4.1; Clopper and
 * Pearson, Biometrika 26 (1934), by beta quantiles (from memory).
 */
export function survivalLimits(
  times: readonly Between[],
  confidence = 0.95,
): (seconds: number) => { readonly low: number; readonly high: number } {
  const tail = (1 - confidence) / 2;
  const count = times.length;
  const exact = ascending(times.filter((t) => t.low === t.high).map((t) => t.low));
  const lows = ascending(times.filter((t) => t.low !== t.high).map((t) => t.low));
  const highs = ascending(times.map((t) => t.high));
  return (seconds) => {
    // An end after `low`, between two readings, comes after `seconds` also where the two are the same instant.
    const surely = countFrom(exact, (t) => t > seconds) + countFrom(lows, (t) => t >= seconds);
    const perhaps = countFrom(highs, (t) => t > seconds);
    return {
      low: surely === 0 ? 0 : betaQuantileAt(tail, surely, count - surely + 1),
      high: perhaps === count ? 1 : betaQuantileAt(1 - tail, perhaps + 1, count - perhaps),
    };
  };
}

function ascending(values: readonly number[]): readonly number[] {
  return [...values].sort((a, b) => a - b);
}

/** How many hold, where all that follow one that holds do too. */
function countFrom(sorted: readonly number[], holds: (value: number) => boolean): number {
  return sorted.length - firstThatHolds(sorted, holds);
}
