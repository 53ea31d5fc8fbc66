import { type Counted, rateRatio, together } from '../statistics/rate-ratio.ts';
import { ratioBySpread, type SpreadRatio } from '../statistics/spread-of-rates.ts';
import { mantelHaenszel, stratifiedChance, type TwoRates } from '../statistics/stratified-rates.ts';
import { groupBy } from '../timeline/groups.ts';
import type { Estimate, LossRatio } from '../vocabulary.ts';
import { adjustedOf } from './compare-bouts.ts';
import type { Membership } from './group-spans.ts';
import type { FleetLimits } from './limits.ts';

/** One pair under two groups; where it was in one only, there is no time and no bout in the other. */
interface PairRates extends TwoRates {
  readonly pair: string;
}

/**
 * Every two groups compared, each with at least 30 observed days. Pairs that were in both are compared with themselves
 * (Mantel-Haenszel), which leaves out what is their own; where there are not two such, all pairs of one group with all of the other.
 * Groups differ where that is more than chance with all comparisons, and still is without the pair that speaks most for it.
 */
export function lossRatios(
  groups: readonly (readonly Membership[])[],
  limits: FleetLimits,
): readonly LossRatio[] {
  const compared = groups.flatMap((one, index) =>
    groups.slice(index + 1).flatMap((two) => ratioOf(one, two, limits)),
  );
  const adjusted = adjustedOf(compared.map(({ p }) => p));
  const steady = adjustedOf(compared.map(({ withoutStrongest }) => withoutStrongest));
  return compared.map(({ group, other, pairsInBoth, ratio, strongest }, index) => {
    const [p, isSteady] = [adjusted[index] ?? 1, (steady[index] ?? 1) <= limits.falseDiscovery];
    const byOnePair = p <= limits.falseDiscovery && !isSteady ? strongest : null;
    return higherFirst({ group, other, pairsInBoth, ratio, p, differs: isSteady, byOnePair });
  });
}

/** The group with the higher rate over the other. */
function higherFirst(found: LossRatio): LossRatio {
  const { group, other, ratio } = found;
  if (ratio.value === null || ratio.value >= 1) return found;
  const inverse = (value: number | null): number | null => (value === null || value === 0 ? null : 1 / value);
  const turned = { value: inverse(ratio.value), low: inverse(ratio.high), high: inverse(ratio.low) };
  return { ...found, group: other, other: group, ratio: turned };
}

interface Found extends Omit<LossRatio, 'differs' | 'byOnePair'> {
  readonly strongest: string | null;
  /** The chance without that pair, or with it where that is greater. */
  readonly withoutStrongest: number;
}

function ratioOf(
  one: readonly Membership[],
  two: readonly Membership[],
  limits: FleetLimits,
): readonly Found[] {
  const [group, other] = [one[0]?.group, two[0]?.group];
  const all = [...groupBy([...one, ...two], (m) => m.pair)].map(([pair, own]): PairRates => {
    const countOf = (name: string | undefined): Counted => countOfAll(own.filter((m) => m.group === name));
    return { pair, first: countOf(group), second: countOf(other) };
  });
  const inBoth = all.filter(({ first, second }) => first.exposure > 0 && second.exposure > 0);
  // One pair that was in both says nothing of the groups.
  const isStratified = inBoth.length > 1;
  const rates = isStratified ? inBoth : all;
  const [whole] = crude(rates);
  if (whole === undefined || group === undefined || other === undefined) return [];
  const least = Math.min(whole.first.exposure, whole.second.exposure);
  if (least < limits.leastObservedSeconds || whole.first.count + whole.second.count === 0) return [];
  const { ratio, chanceOf } = isStratified ? byPair(rates, limits) : byGroup(rates, whole, limits);
  const p = chanceOf(rates);
  const strongest = strongestOf(rates, whole);
  const without = p > limits.falseDiscovery ? p : chanceOf(rates.filter(({ pair }) => pair !== strongest));
  const pairsInBoth = isStratified ? inBoth.length : null;
  return [{ group, other, pairsInBoth, ratio, p, strongest, withoutStrongest: Math.max(p, without) }];
}

/** How two groups compare, and how likely so great a difference is by chance, of all pairs or of fewer. */
interface Comparison {
  readonly ratio: Estimate;
  readonly chanceOf: (rates: readonly PairRates[]) => number;
}

/** Each pair with itself. */
function byPair(rates: readonly PairRates[], { confidence }: FleetLimits): Comparison {
  const found = mantelHaenszel(rates, confidence);
  const ratio = { value: found?.ratio ?? null, low: found?.low ?? null, high: found?.high ?? null };
  return { ratio, chanceOf: stratifiedChance };
}

/** All pairs of the one group with all of the other: exact, and no surer than the spread between the pairs of a group allows. */
function byGroup(rates: readonly PairRates[], whole: TwoRates, { confidence }: FleetLimits): Comparison {
  const exact = rateRatio(whole.first, whole.second, confidence);
  const spread = bySpread(rates, confidence);
  const low = exact === null ? null : Math.min(exact.low, spread?.low ?? exact.low);
  const exactHigh = exact?.high ?? null;
  const high = exactHigh === null ? null : Math.max(exactHigh, spread?.high ?? exactHigh);
  return {
    ratio: { value: exact?.ratio ?? null, low, high },
    chanceOf: (used) => Math.max(stratifiedChance(crude(used)), bySpread(used, confidence)?.p ?? 0),
  };
}

function bySpread(rates: readonly PairRates[], confidence: number): SpreadRatio | null {
  const watched = (side: (rate: PairRates) => Counted): readonly Counted[] =>
    rates.map(side).filter(({ exposure }) => exposure > 0);
  return ratioBySpread(
    watched((rate) => rate.first),
    watched((rate) => rate.second),
    confidence,
  );
}

function countOfAll(members: readonly Membership[]): Counted {
  return together(members.map((m) => ({ count: m.bouts.length, exposure: m.observedSeconds })));
}

/** All pairs as one stratum; none where one of the groups has no time. */
function crude(rates: readonly PairRates[]): readonly TwoRates[] {
  const [first, second] = [together(rates.map((r) => r.first)), together(rates.map((r) => r.second))];
  return first.exposure > 0 && second.exposure > 0 ? [{ first, second }] : [];
}

/** The pair that adds most to the difference. */
function strongestOf(rates: readonly PairRates[], whole: TwoRates): string | null {
  const { first, second } = whole;
  const isMore = first.count * second.exposure > second.count * first.exposure;
  const rate = (first.count + second.count) / (first.exposure + second.exposure);
  const excess = rates.map((own) => {
    const beyond = own.first.count - own.second.count - rate * (own.first.exposure - own.second.exposure);
    return isMore ? beyond : -beyond;
  });
  return (
    rates[excess.indexOf(excess.reduce((most, own) => Math.max(most, own), Number.NEGATIVE_INFINITY))]
      ?.pair ?? null
  );
}
