import { betaAtMost } from './distributions.ts';
import type { Counted } from './rate-ratio.ts';

/**
 * How many events come in `ahead` (in units of the exposure, positive) after so many in so much: what is expected, and the least
 * and greatest count that the past does not speak against. Exact: of all events, past and future, each falls into the
 * future with the share that `ahead` has of the whole time, so a count is left out where its tail of that binomial
 * distribution is no more than half of what `confidence` leaves. It asks for events that come singly, at a rate that stays
 * as it was. `null` without exposure. Source: Hahn and Meeker, Statistical Intervals (1991), chapter 7 (from memory).
 */
export function predictCount(
  { count, exposure }: Counted,
  ahead: number,
  confidence = 0.95,
): { readonly value: number; readonly low: number; readonly high: number } | null {
  if (!(exposure > 0 && ahead > 0)) return null;
  const tail = (1 - confidence) / 2;
  const share = ahead / (exposure + ahead);
  // P[X <= y of count + y] by the beta distribution; P[X >= y] likewise.
  const atMost = (y: number): number => 1 - betaAtMost(share, y + 1, count);
  const atLeast = (y: number): number => (y === 0 ? 1 : betaAtMost(share, y, count + 1));
  const low = count === 0 ? 0 : firstWhere((y) => atMost(y) > tail);
  const high = firstWhere((y) => atLeast(y + 1) <= tail);
  return { value: (count / exposure) * ahead, low, high };
}

/** The least whole number, from 0 on, that holds; once one holds all greater ones do. */
function firstWhere(holds: (value: number) => boolean): number {
  let [below, to] = [-1, 1];
  while (!holds(to)) [below, to] = [to, to * 2];
  while (to - below > 1) {
    const middle = (below + to) >> 1;
    if (holds(middle)) to = middle;
    else below = middle;
  }
  return to;
}
