import type { Duration, Instant, LimitOutcome, Measure } from '../vocabulary.ts';

/** An instant with the resolution of its stamp, in milliseconds: 0, or 1000 where the source prints whole seconds. */
export interface Stamp extends Instant {
  readonly resolution: number;
}

/**
 * Time from one instant to a later one, in seconds, with the bounds that polling and whole-second stamps leave:
 * `0 <= low <= seconds <= high`, all equal for two journal entries with decimals. An end before its start counts as 0.
 * Source: design.md, section 2.
 */
export function between(start: Stamp, end: Stamp): Duration {
  const slack = Math.max(start.resolution, end.resolution);
  const seconds = Math.max(0, end.time - start.time) / 1000;
  const low = Math.max(0, end.earliest - start.time - slack) / 1000;
  const high = Math.max(0, end.time - start.earliest + slack) / 1000;
  return { seconds, low: Math.min(low, seconds), high: Math.max(high, seconds) };
}

/** Decides a limit on the bounds, never on the middle: within only if `high` is, exceeded only if `low` is past it. */
export function judge(low: number, high: number | null, limitSeconds: number): LimitOutcome {
  if (low > limitSeconds) return 'exceeded';
  return high !== null && high <= limitSeconds ? 'within' : 'inconclusive';
}

/** A measured duration without a limit; bounds in seconds. */
export function measured(duration: Duration): Measure {
  return { ...duration, censored: false, outcome: null };
}

/** A wait whose end was not seen: it lasted longer than `duration`, the time watched. */
export function censored(duration: Duration): Measure {
  return { seconds: duration.seconds, low: duration.low, high: null, censored: true, outcome: null };
}

/** Nothing in the logs speaks of this duration. */
export const notObserved: Measure = {
  seconds: null,
  low: null,
  high: null,
  censored: false,
  outcome: 'not-observed',
};

/** The instant of something whose stamp is exact, as for the end of a log. */
export function exactly(time: number): Stamp {
  return { time, earliest: time, resolution: 0 };
}
