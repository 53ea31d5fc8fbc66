import { normalBeyond } from './distributions.ts';

/** Above 0 events come more and more often, below 0 less and less; `p` two-sided. */
export interface Trend {
  readonly z: number;
  readonly p: number;
}

/**
 * Laplace's test of trend, observation ended by time: `sqrt(12 n) * sum(t - T/2) / (n T)`. `times` of the events since
 * observation began, up to `end`, in one unit. `null` without an
 * event or without observation, or where an event lies outside it.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 8.2.3.4.
 */
export function laplaceTrend(times: readonly number[], end: number): Trend | null {
  if (times.length === 0 || !(end > 0) || times.some((time) => !(time >= 0 && time <= end))) return null;
  const deviation = times.reduce((sum, time) => sum + (time / end - 1 / 2), 0);
  const z = Math.sqrt(12 / times.length) * deviation;
  return { z, p: normalBeyond(z) };
}
