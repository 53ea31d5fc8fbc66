import type { RateChange } from '../vocabulary.ts';
import type { Membership } from './group-spans.ts';
import type { FleetLimits } from './limits.ts';
import { observedBefore } from './observed-clock.ts';
import { changesSaid, curveOf, type FoundChange, likeliestChange } from './rate-changes.ts';

/**
 * Of each group, in the order given, the one change of its rate of bouts that is more than chance with all groups asked, also
 * without the pair that speaks most for it: a change of one pair is none of its firmware. Pairs come and go, so each has the
 * rate that it had in the group.
 */
export function changesOfGroups(
  groups: readonly (readonly Membership[])[],
  limits: FleetLimits,
): readonly (RateChange | null)[] {
  return changesSaid(
    groups.map((own) => changeOf(own, limits)),
    limits,
  );
}

function changeOf(own: readonly Membership[], limits: FleetLimits): FoundChange | null {
  const found = likeliestIn(own, limits);
  if (found === null || found.point.p > limits.falseDiscovery) return found;
  const rest = likeliestIn(withoutStrongest(own, found), limits);
  return { ...found, point: { ...found.point, p: Math.max(found.point.p, rest?.point.p ?? 1) } };
}

function likeliestIn(own: readonly Membership[], limits: FleetLimits): FoundChange | null {
  const instants = own.flatMap((m) => m.bouts.map((bout) => bout.time)).sort((a, b) => a - b);
  const clock = expectedBouts(own, instants);
  const found = likeliestChange(clock, instants.length, instants, limits);
  if (found === null) return null;
  const { point, time } = found;
  const until = own.reduce((sum, m) => sum + observedBefore(m.observed, time), 0) / 1000;
  const all = own.reduce((sum, m) => sum + m.observedSeconds, 0);
  return {
    point,
    time,
    before: { bouts: point.before, observedSeconds: until },
    after: { bouts: point.after, observedSeconds: all - until },
    curve: curveOf(
      own.flatMap((m) => m.observed),
      instants,
    ),
  };
}

/**
 * How many bouts were to be expected by each instant, in order, if every pair kept the rate that it had in the group. Given the number of each pair,
 * the bouts are then spread more evenly on this clock than uniform values, so that their chance is at most the one computed.
 */
function expectedBouts(own: readonly Membership[], instants: readonly number[]): readonly number[] {
  const edges = own
    .flatMap(({ observed, observedSeconds, bouts }) => {
      const slope = observedSeconds > 0 ? bouts.length / (observedSeconds * 1000) : 0;
      return observed.flatMap(({ from, to }) => [
        { time: from, slope },
        { time: to, slope: -slope },
      ]);
    })
    .sort((a, b) => a.time - b.time);
  let [next, slope, expected, reached] = [0, 0, 0, 0];
  return instants.map((instant) => {
    for (let edge = edges[next]; edge !== undefined && edge.time <= instant; edge = edges[next]) {
      expected += slope * (edge.time - reached);
      reached = edge.time;
      slope += edge.slope;
      next += 1;
    }
    expected += slope * (instant - reached);
    reached = instant;
    return expected;
  });
}

/** All but the pair that has the most bouts beyond its expected share in the denser part. */
function withoutStrongest(
  own: readonly Membership[],
  { time, before, after }: FoundChange,
): readonly Membership[] {
  const rises = before.bouts * after.observedSeconds < after.bouts * before.observedSeconds;
  const excess = own.map(({ bouts, observed, observedSeconds }) => {
    const early = bouts.filter((bout) => bout.time < time).length;
    const expected = (bouts.length * observedBefore(observed, time)) / (observedSeconds * 1000);
    return rises ? expected - early : early - expected;
  });
  const strongest = excess.indexOf(
    excess.reduce((most, one) => Math.max(most, one), Number.NEGATIVE_INFINITY),
  );
  return own.filter((_, index) => index !== strongest);
}
