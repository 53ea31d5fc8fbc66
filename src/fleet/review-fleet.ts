import { groupBy } from '../timeline/groups.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import type { ComparedBringUp, ComparedPair, Finding, Fleet, PairReview } from '../vocabulary.ts';
import { alikeNames } from './alike-names.ts';
import { boutsAhead } from './bouts-ahead.ts';
import { censusOf } from './census.ts';
import { compareGroups } from './compare-groups.ts';
import { forecastOf } from './forecast.ts';
import type { FleetLimits } from './limits.ts';
import { lossesByGroup } from './loss-groups.ts';
import { syncDrifts } from './over-time.ts';
import { changesOfPairs } from './rate-changes.ts';
import { rateLosses } from './rate-losses.ts';
import { readinessForSwap } from './readiness.ts';
import { groupReviews, syncTimes } from './sync-groups.ts';
import { worstFirst } from './tables.ts';

const dayMs = 86_400_000;

/** What to ask of a fleet. */
export interface FleetQuestion {
  readonly by: Fleet['by'];
  readonly swaps: number;
  /** For how many days a pair that is fit had a ready partner without a break; the usual time where not given. */
  readonly readyDays?: number | undefined;
}

/** What a comparison of pairs gives: all but the files, the bring-ups and months that it was made from, and what was found of each pair. */
export type Comparison = Omit<Fleet, 'inputs' | 'attempts' | 'months' | 'findings'>;

/**
 * All pairs compared with each other, those that stand out first, then by rank; all bring-ups in groups;
 * and what the next swaps take. Pairs are given in the order of their names. `findings` are those of all pairs, for their
 * flapping. Source: design.md, section 7.
 */
export function reviewFleet(
  fleet: readonly ComparedPair[],
  findings: readonly Finding[],
  { by, swaps, readyDays }: FleetQuestion,
  rules: TimelineRules,
  limits: FleetLimits,
): Comparison {
  const { rates, power } = rateLosses(fleet, limits);
  const changes = changesOfPairs(fleet, limits);
  const readyMs = readyDays === undefined ? limits.readyMs : readyDays * dayMs;
  const flapping = groupBy(
    findings.filter((f) => f.id === 'flapping'),
    (f) => f.pair ?? '',
  );
  const pairs = fleet.flatMap((figures, index): readonly PairReview[] => {
    const rate = rates[index];
    if (rate === undefined) return [];
    const { pair, site, availability } = figures;
    const readiness = readinessForSwap(figures, readyMs);
    const own = { site, availability, flapping: flapping.get(pair) ?? [] };
    return [{ ...rate, change: changes[index] ?? null, readiness, ...own }];
  });
  const attempts = fleet.flatMap((f) => f.bringUps);
  const sites = new Map(fleet.map(({ pair, site }) => [pair, site]));
  const groupNamed = (attempt: ComparedBringUp): string | null => groupOf(attempt, by, sites);
  const times = syncTimes(attempts, groupNamed);
  const groups = groupReviews(times, limits);
  const census = censusOf(fleet);
  return {
    lightLimitSeconds: rules.lightLimitSeconds,
    by,
    pairs: worstFirst(pairs),
    power,
    ...lossesByGroup(fleet, by, limits),
    groups,
    logRank: compareGroups(times, groups, limits),
    forecast: forecastOf(attempts, swaps, limits),
    // Of a pair whose rate has changed, the rate so far says nothing of the next year.
    boutsNextYear: boutsAhead(
      fleet.filter((_, index) => !changes[index]),
      limits,
    ),
    drifts: syncDrifts(attempts, groupNamed, limits),
    census,
    alike: alikeIn(census),
  };
}

/** Names of firmware, and of models, that may be one. */
function alikeIn(census: Fleet['census']): Fleet['alike'] {
  return (['firmware', 'model'] as const).flatMap((signal) =>
    alikeNames(census.flatMap((c) => (c.signal === signal && c.value !== null ? [c.value] : []))),
  );
}

function groupOf(
  attempt: ComparedBringUp,
  by: Fleet['by'],
  sites: ReadonlyMap<string, string | null>,
): string | null {
  return by === 'site' ? (sites.get(attempt.pair) ?? null) : attempt[by];
}
