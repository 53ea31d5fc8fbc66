import { gammaPoisson } from '../statistics/gamma-poisson.ts';
import { laplaceTrend } from '../statistics/laplace-trend.ts';
import { poissonLimits } from '../statistics/poisson-limits.ts';
import { powerLawTrend } from '../statistics/power-law-trend.ts';
import type { Counted } from '../statistics/rate-ratio.ts';
import { total } from '../timeline/coverage.ts';
import type { ComparedPair, Estimate, Fleet, LossTrend, PairReview, SourceLine } from '../vocabulary.ts';
import { adjustedOf, comparePairs, powerOf } from './compare-bouts.ts';
import { type FleetLimits, yearSeconds } from './limits.ts';
import { boutClock } from './observed-clock.ts';

/** What of a pair tells of its losses. */
export type LossesOf = Pick<ComparedPair, 'pair' | 'observed' | 'losses' | 'bouts'>;

/** How often a pair lost its ready partner, and whether that is more than chance and the rest of the fleet explain. */
export type LossRate = Omit<PairReview, 'site' | 'availability' | 'flapping' | 'readiness' | 'change'>;

/**
 * The rate of bouts of every pair, in the order given; which pairs stand out (`comparePairs`), their ranking and trends; and
 * where none stands out, what would have been found. Source: design.md, section 7.
 */
export function rateLosses(
  fleet: readonly LossesOf[],
  limits: FleetLimits,
): { readonly rates: readonly LossRate[]; readonly power: Fleet['power'] } {
  const counted = fleet.map(countOf);
  const compared = comparePairs(counted, limits);
  const shrunken = shrunkenRates(counted, limits);
  const places = placesOf(shrunken);
  const trends = trendsOf(fleet, limits);
  const rates = fleet.map((facts, index): LossRate => {
    const { count, exposure } = counted[index] ?? { count: 0, exposure: 0 };
    const rate = shrunken[index] ?? null;
    const { p, standsOut } = compared[index] ?? { p: null, standsOut: null };
    return {
      pair: facts.pair,
      observedSeconds: exposure,
      losses: facts.losses.filter((l) => l.kind === 'counted').length,
      bouts: count,
      evidence: newestLines(facts),
      ratePerYear: perYear({ count, exposure }, limits),
      shrunkenPerYear: rate === null ? null : rate * yearSeconds,
      rank: rate === null ? null : (places.get(rate) ?? null),
      p,
      standsOut,
      trend: trends[index] ?? notJudged,
    };
  });
  return { rates, power: rates.some((rate) => rate.standsOut) ? null : powerOf(counted, limits) };
}

/** The place of each rate, 1 the greatest; of equal ones the same. */
function placesOf(rates: readonly (number | null)[]): ReadonlyMap<number, number> {
  const worstFirst = rates.filter((rate) => rate !== null).sort((a, b) => b - a);
  const places = new Map<number, number>();
  for (const [index, rate] of worstFirst.entries()) if (!places.has(rate)) places.set(rate, index + 1);
  return places;
}

function countOf({ bouts, observed }: LossesOf): Counted {
  return { count: bouts.length, exposure: total(observed) / 1000 };
}

const mostLines = 20;

/** The first line of each of the newest counted losses, in the order of time. */
function newestLines({ losses }: LossesOf): readonly SourceLine[] {
  const counted = losses.filter((l) => l.kind === 'counted').slice(-mostLines);
  return counted.flatMap(({ lines }) => lines.slice(0, 1));
}

/** Bouts in a year of observed time, of a count over seconds; `null` where too little was observed to say it. */
export function perYear(
  { count, exposure }: Counted,
  { confidence, leastObservedSeconds }: FleetLimits,
): Estimate | null {
  if (exposure < leastObservedSeconds) return null;
  return poissonLimits({ count, exposure: exposure / yearSeconds }, confidence);
}

/** Rates drawn towards that of all, per second; `null` for a pair that is not judged. Without a bout all are 0. */
function shrunkenRates(
  counted: readonly Counted[],
  { leastObservedSeconds }: FleetLimits,
): readonly (number | null)[] {
  const judged = counted.filter(({ exposure }) => exposure >= leastObservedSeconds);
  const rates = gammaPoisson(judged)?.shrunken ?? judged.map(() => 0);
  let next = 0;
  return counted.map(({ exposure }) => {
    if (exposure < leastObservedSeconds) return null;
    next += 1;
    return rates[next - 1] ?? null;
  });
}

const notJudged: LossTrend = { laplace: null, p: null, shape: null, shapeP: null, comesCloser: null };

/** Laplace's test and the power law over the observed time alone, adjusted for all pairs that had a bout. */
function trendsOf(fleet: readonly LossesOf[], limits: FleetLimits): readonly LossTrend[] {
  const tests = fleet.map((facts) => {
    const { times, end } = boutClock(facts);
    if (end / 1000 < limits.leastObservedSeconds) return null;
    return { laplace: laplaceTrend(times, end), power: powerLawTrend(times, end) };
  });
  const adjusted = adjustedOf(tests.map((test) => test?.laplace?.p ?? null));
  return tests.map((test, index) => {
    if (test === null) return notJudged;
    const { laplace, power } = test;
    return {
      laplace: laplace?.z ?? null,
      p: laplace?.p ?? null,
      shape: power?.shape ?? null,
      shapeP: power?.p ?? null,
      comesCloser: (laplace?.z ?? 0) > 0 && (adjusted[index] ?? 1) <= limits.falseDiscovery,
    };
  });
}
