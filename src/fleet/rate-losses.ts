import { benjaminiHochberg } from '../statistics/benjamini-hochberg.ts';
import { laplaceTrend } from '../statistics/laplace-trend.ts';
import { poissonLimits } from '../statistics/poisson-limits.ts';
import { powerLawTrend } from '../statistics/power-law-trend.ts';
import { rateRatio } from '../statistics/rate-ratio.ts';
import { total } from '../timeline/coverage.ts';
import type { PairFacts } from '../timeline/facts.ts';
import type { Estimate, Interval, PairReview, SourceLine } from '../vocabulary.ts';
import { type FleetLimits, yearSeconds } from './limits.ts';

/** How often a pair lost its ready partner, and whether that is more than chance and the rest of the fleet explain. */
export type LossRate = Pick<
  PairReview,
  'pair' | 'observedSeconds' | 'losses' | 'evidence' | 'ratePerYear' | 'p' | 'standsOut' | 'trend'
>;

/**
 * The loss rate of every pair. A pair stands out if its rate is higher than that of all others together (exact one-sided
 * Poisson comparison) at the stated rate of false discoveries over all pairs. Source: design.md, section 7.
 */
export function rateLosses(fleet: readonly PairFacts[], limits: FleetLimits): readonly LossRate[] {
  const counted = fleet.map(countOf);
  const all = {
    count: counted.reduce((sum, c) => sum + c.count, 0),
    exposure: counted.reduce((sum, c) => sum + c.exposure, 0),
  };
  const chances = counted.map(({ count, exposure }) => {
    const rest = { count: all.count - count, exposure: all.exposure - exposure };
    return rateRatio({ count, exposure }, rest, limits.confidence)?.p ?? null;
  });
  const adjusted = benjaminiHochberg(chances.map((p) => p ?? 1));
  const trends = fleet.map(trendOf);
  const adjustedTrends = benjaminiHochberg(trends.map(({ p }) => p ?? 1));
  return fleet.map((facts, index) => {
    const { count, exposure } = counted[index] ?? { count: 0, exposure: 0 };
    return {
      pair: facts.timeline.pair,
      observedSeconds: exposure,
      losses: count,
      evidence: newestLines(facts),
      ratePerYear: perYear(count, exposure, limits),
      p: chances[index] ?? null,
      standsOut: (adjusted[index] ?? 1) <= limits.falseDiscovery,
      trend: closerOrNot(trends[index], adjustedTrends[index], limits),
    };
  });
}

function countOf({ losses, timeline }: PairFacts): { readonly count: number; readonly exposure: number } {
  return {
    count: losses.filter((l) => l.kind === 'counted').length,
    exposure: total(timeline.observed) / 1000,
  };
}

const mostLines = 20;

/** The first line of each of the newest counted losses, in the order of time. */
function newestLines({ losses }: PairFacts): readonly SourceLine[] {
  const counted = losses.filter((l) => l.kind === 'counted').slice(-mostLines);
  return counted.map(({ event }) => {
    const [{ file, line, text }] = event.sources;
    return { file, line, text };
  });
}

function perYear(count: number, exposure: number, { confidence }: FleetLimits): Estimate {
  return (
    poissonLimits({ count, exposure: exposure / yearSeconds }, confidence) ?? {
      value: null,
      low: null,
      high: null,
    }
  );
}

type Tests = Omit<PairReview['trend'], 'comesCloser'>;

function closerOrNot(
  tests: Tests | undefined,
  adjusted: number | undefined,
  { falseDiscovery }: FleetLimits,
): PairReview['trend'] {
  const { laplace, p, shape, shapeP } = tests ?? { laplace: null, p: null, shape: null, shapeP: null };
  const comesCloser = (laplace ?? 0) > 0 && (adjusted ?? 1) <= falseDiscovery;
  return { laplace, p, shape, shapeP, comesCloser };
}

/** Laplace's test and the power law over the observed time alone: unobserved spans are left out of the clock. */
function trendOf({ losses, timeline }: PairFacts): Tests {
  const times = losses
    .filter((l) => l.kind === 'counted')
    .map((l) => observedBefore(timeline.observed, l.event.time));
  const end = total(timeline.observed);
  const [laplace, power] = [laplaceTrend(times, end), powerLawTrend(times, end)];
  return {
    laplace: laplace?.z ?? null,
    p: laplace?.p ?? null,
    shape: power?.shape ?? null,
    shapeP: power?.p ?? null,
  };
}

function observedBefore(observed: readonly Interval[], time: number): number {
  return observed.reduce((sum, { from, to }) => sum + Math.max(0, Math.min(to, time) - from), 0);
}
