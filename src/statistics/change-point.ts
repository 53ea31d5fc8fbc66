import { withinBounds } from './ordered-uniform.ts';

/** The one change of a Poisson rate that is likeliest. */
export interface ChangePoint {
  /** The event from which on (rate rises), or up to which (it falls), the rate is another: its place in the order, from 1. */
  readonly event: number;
  readonly time: number;
  /** Events before the change, and from it on. */
  readonly before: number;
  readonly after: number;
  /** Twice the logarithm of the likelihood ratio, the greatest over all instants. */
  readonly statistic: number;
  /** Chance of so great a statistic if the rate never changed; exact for any number of events. */
  readonly p: number;
}

/**
 * One change of a Poisson rate at an unknown instant: the greatest likelihood ratio of two rates against one over all
 * instants at which an event begins or ends a denser part of at least `least` events. `times` of the events since observation began, in order, strictly between 0
 * and `end`. `null` for fewer than `least` events or where one lies elsewhere. The chance is exact: without a change the
 * events are ordered uniform values, and the statistic stays below a bound just where each of them stays within two.
 * Sources: Worsley, Confidence Regions and Tests for a Change-Point in a Sequence of Exponential Family Random Variables, Biometrika 73 (1986);
 * Loader, Change Point Estimation Using Nonparametric Regression and Poisson processes, Annals of Statistics 20 (1992) (both from memory).
 */
export function changePoint(times: readonly number[], end: number, least: number): ChangePoint | null {
  const count = times.length;
  if (count < least || times.some((time) => !(time > 0 && time < end))) return null;
  let best = { event: 0, before: 0, statistic: 0 };
  for (const [index, time] of times.entries()) {
    const [share, event] = [time / end, index + 1];
    const candidates = [
      // A denser part from this event on, or up to it.
      ...(share > index / count && count - index >= least ? [index] : []),
      ...(share < event / count && event >= least ? [event] : []),
    ];
    for (const before of candidates) {
      const statistic = 2 * logRatio(before, count, share);
      if (statistic > best.statistic) best = { event, before, statistic };
    }
  }
  const { event, before, statistic } = best;
  const time = times[event - 1];
  if (time === undefined) return null;
  return { event, time, before, after: count - before, statistic, p: chanceOf(statistic / 2, count, least) };
}

/** Logarithm of the likelihood ratio of two rates to one, with `before` of `count` events in the first share of the time. */
function logRatio(before: number, count: number, share: number): number {
  const after = count - before;
  const part = (events: number, of: number): number =>
    events === 0 ? 0 : events * Math.log(events / (count * of));
  return part(before, share) + part(after, 1 - share);
}

/** Past so many events the exact sum takes too long. */
const mostExact = 300;

/**
 * Chance that the greatest logarithm of the ratio is at least `bound`; of very many events an upper bound of it: by Chernoff's inequality
 * each event is beyond one of its bounds with a chance of at most `exp(-bound)`.
 */
function chanceOf(bound: number, count: number, least: number): number {
  if (count > mostExact) return Math.min(1, 2 * count * Math.exp(-bound));
  const bounds = Array.from({ length: count }, (_, index) => {
    const event = index + 1;
    const up = (share: number): number => logRatio(index, count, share);
    const down = (share: number): number => logRatio(event, count, share);
    return {
      low: event >= least ? crossing(down, bound, event / count, 0) : 0,
      high: count - index >= least ? crossing(up, bound, index / count, 1) : 1,
    };
  });
  return Math.max(0, 1 - withinBounds(bounds));
}

/** Where a function that grows from `from`, where it is 0, towards `to` reaches a bound; `to` where it stays below. */
function crossing(of: (share: number) => number, bound: number, from: number, to: number): number {
  let [below, above] = [from, to];
  for (let step = 0; step < 60; step += 1) {
    const middle = (below + above) / 2;
    if (of(middle) < bound) below = middle;
    else above = middle;
  }
  return above;
}
