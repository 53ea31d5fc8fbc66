import { type ChangePoint, changePoint } from '../statistics/change-point.ts';
import type { ComparedPair, Interval, RateChange } from '../vocabulary.ts';
import { adjustedOf } from './compare-bouts.ts';
import type { FleetLimits } from './limits.ts';
import { boutClock } from './observed-clock.ts';

/** The likeliest change of one rate: on a clock that runs as bouts were to be expected, and when it was. */
export interface FoundChange extends Omit<RateChange, 'p'> {
  readonly point: ChangePoint;
}

/**
 * Of each pair, in the order given, the one change of its rate of bouts that is more than chance with all pairs asked: those
 * with at least `leastBouts`. `null` where there is none.
 */
export function changesOfPairs(
  fleet: readonly Pick<ComparedPair, 'bouts' | 'observed'>[],
  limits: FleetLimits,
): readonly (RateChange | null)[] {
  return changesSaid(
    fleet.map((pair) => {
      const { times, end } = boutClock(pair);
      if (end / 1000 < limits.leastObservedSeconds) return null;
      const instants = pair.bouts.map((bout) => bout.time);
      const found = likeliestChange(times, end, instants, limits);
      if (found === null) return null;
      const { point, time } = found;
      return {
        point,
        time,
        before: { bouts: point.before, observedSeconds: point.time / 1000 },
        after: { bouts: point.after, observedSeconds: (end - point.time) / 1000 },
        curve: curveOf(pair.observed, instants),
      };
    }),
    limits,
  );
}

/** Those that are more than chance, with all that were asked. */
export function changesSaid(
  asked: readonly (FoundChange | null)[],
  { falseDiscovery }: FleetLimits,
): readonly (RateChange | null)[] {
  const adjusted = adjustedOf(asked.map((found) => found?.point.p ?? null));
  return asked.map((found, index) => {
    const p = adjusted[index] ?? 1;
    if (found === null || p > falseDiscovery) return null;
    const { time, before, after, curve } = found;
    return { time, before, after, p, curve };
  });
}

/** The likeliest change of bouts on a clock, and the instant of its bout; `null` for too few. A bout at either end is no part of the question. */
export function likeliestChange(
  times: readonly number[],
  end: number,
  instants: readonly number[],
  { change }: FleetLimits,
): { readonly point: ChangePoint; readonly time: number } | null {
  const inside = [...times.keys()].filter((index) => {
    const time = times[index] ?? 0;
    return time > 0 && time < end;
  });
  if (inside.length < change.leastBouts) return null;
  const point = changePoint(
    inside.map((index) => times[index] ?? 0),
    end,
    change.leastDense,
  );
  const time = point === null ? undefined : instants[inside[point.event - 1] ?? -1];
  return point === null || time === undefined ? null : { point, time };
}

/** How many bouts there had been by each of their instants, in order, from the start of what was observed to its end. */
export function curveOf(observed: readonly Interval[], instants: readonly number[]): RateChange['curve'] {
  // Of all pairs of a group they are too many to be arguments.
  const from = observed.reduce((least, o) => Math.min(least, o.from), Number.POSITIVE_INFINITY);
  const to = observed.reduce((most, o) => Math.max(most, o.to), Number.NEGATIVE_INFINITY);
  return [
    { time: from, bouts: 0 },
    ...instants.map((time, index) => ({ time, bouts: index + 1 })),
    { time: to, bouts: instants.length },
  ];
}
