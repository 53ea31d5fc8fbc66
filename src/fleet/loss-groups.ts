import { studentWithin } from '../statistics/distributions.ts';
import { meanCumulative } from '../statistics/mean-cumulative.ts';
import { groupBy } from '../timeline/groups.ts';
import { type ComparedPair, compareText, type Fleet, type LossGroup, type MeanCount } from '../vocabulary.ts';
import { changesOfGroups } from './group-changes.ts';
import { type Membership, membershipsOf, mixed, notKnown } from './group-spans.ts';
import type { FleetLimits } from './limits.ts';
import { lossRatios } from './loss-ratios.ts';
import { observedBefore } from './observed-clock.ts';
import { perYear } from './rate-losses.ts';
import { areStruckTogether, withoutStorms } from './storms.ts';

const dayMs = 86_400_000;

/** The bouts of the fleet by firmware, model or site: of each group by its name, and every two of them compared. */
export function lossesByGroup(
  fleet: readonly Omit<ComparedPair, 'bringUps' | 'fitness' | 'availability'>[],
  by: Fleet['by'],
  limits: FleetLimits,
): Pick<Fleet, 'lossGroups' | 'lossRatios'> {
  const members = membershipsOf(fleet, by);
  const named = members.filter(({ group }) => group !== mixed && group !== notKnown);
  const compared = inGroups(withoutStorms(named, limits)).map(([, own]) => own);
  const changes = changesOfGroups(compared, limits);
  return {
    lossGroups: inGroups(members).map(([group, own]) => {
      const change = changes[compared.findIndex((one) => one[0]?.group === group)] ?? null;
      return groupOf(group, own, change, limits);
    }),
    lossRatios: lossRatios(compared, limits),
  };
}

/** By their names. */
function inGroups(members: readonly Membership[]): readonly (readonly [string, readonly Membership[]])[] {
  return [...groupBy(members, (m) => m.group)].sort(([a], [b]) => compareText(a, b));
}

function groupOf(
  group: string,
  own: readonly Membership[],
  change: LossGroup['change'],
  limits: FleetLimits,
): LossGroup {
  const observedSeconds = own.reduce((sum, m) => sum + m.observedSeconds, 0);
  const bouts = own.reduce((sum, m) => sum + m.bouts.length, 0);
  const struckTogether = areStruckTogether(own, limits);
  const rate = perYear({ count: bouts, exposure: observedSeconds }, limits);
  return {
    group,
    pairs: own.length,
    observedSeconds,
    losses: own.reduce((sum, m) => sum + m.losses, 0),
    bouts,
    struckTogether,
    ratePerYear: rate === null || !struckTogether ? rate : { value: rate.value, low: null, high: null },
    curve: curveOf(own, struckTogether ? Number.POSITIVE_INFINITY : limits.leastCurvePairs, limits),
    change,
  };
}

/**
 * The mean number of bouts of a pair by its observed days in the group. Limits are on the logarithm, so that none is below 0, and
 * by Student's t for the pairs still watched: few pairs tell little of how pairs differ.
 */
function curveOf(
  own: readonly Membership[],
  leastPairs: number,
  { confidence }: FleetLimits,
): readonly MeanCount[] {
  const steps = meanCumulative(
    own.map(({ observed, observedSeconds, bouts }) => ({
      events: bouts.map((bout) => observedBefore(observed, bout.time) / dayMs),
      end: (observedSeconds * 1000) / dayMs,
    })),
  );
  return steps.map(({ time, watched, mean, standardError }) => {
    const isTold = watched >= leastPairs && standardError > 0;
    const deviate = isTold ? studentWithin(confidence, watched - 1) : null;
    const factor = deviate === null ? null : Math.exp((deviate * standardError) / mean);
    return {
      days: time,
      pairs: watched,
      mean,
      low: factor === null ? null : mean / factor,
      high: factor === null ? null : mean * factor,
    };
  });
}
