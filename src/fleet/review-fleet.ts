import { availabilityOf } from '../timeline/exposure.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { groupBy } from '../timeline/groups.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import type { BringUp, Finding, Fleet, PairReview } from '../vocabulary.ts';
import { alikeNames } from './alike-names.ts';
import { boutsAhead } from './bouts-ahead.ts';
import { censusOf } from './census.ts';
import { compareGroups } from './compare-groups.ts';
import { forecastOf } from './forecast.ts';
import type { FleetLimits } from './limits.ts';
import { lossesByGroup } from './loss-groups.ts';
import { lossMonths } from './months.ts';
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

/**
 * All pairs compared with each other, those that stand out first, then by rank; all bring-ups in groups;
 * and what the next swaps take. `findings` are those of all pairs, for their flapping. Source: design.md, section 7.
 */
export function reviewFleet(
  fleet: readonly PairFacts[],
  findings: readonly Finding[],
  { by, swaps, readyDays }: FleetQuestion,
  rules: TimelineRules,
  limits: FleetLimits,
): Omit<Fleet, 'inputs' | 'findings'> {
  const { rates, power } = rateLosses(fleet, limits);
  const changes = changesOfPairs(fleet, limits);
  const readyMs = readyDays === undefined ? limits.readyMs : readyDays * dayMs;
  const flapping = groupBy(
    findings.filter((f) => f.id === 'flapping'),
    (f) => f.pair ?? '',
  );
  const pairs = fleet.flatMap((facts, index): readonly PairReview[] => {
    const rate = rates[index];
    if (rate === undefined) return [];
    const readiness = readinessForSwap(facts, rules, readyMs);
    return [{ ...rate, change: changes[index] ?? null, readiness, ...stateOf(facts, flapping) }];
  });
  const attempts = fleet.flatMap((f) => [...f.bringUps]);
  const sites = new Map(fleet.map((f) => [f.timeline.pair, f.timeline.site]));
  const groupNamed = (attempt: BringUp): string | null => groupOf(attempt, by, sites);
  const times = syncTimes(attempts, groupNamed);
  const groups = groupReviews(times, limits);
  const census = censusOf(fleet);
  return {
    lightLimitSeconds: rules.lightLimitSeconds,
    by,
    pairs: worstFirst(pairs),
    power,
    ...lossesByGroup(fleet, by, limits),
    attempts,
    groups,
    logRank: compareGroups(times, groups, limits),
    forecast: forecastOf(attempts, swaps, limits),
    // Of a pair whose rate has changed, the rate so far says nothing of the next year.
    boutsNextYear: boutsAhead(
      fleet.filter((_, index) => !changes[index]),
      limits,
    ),
    drifts: syncDrifts(attempts, groupNamed, limits),
    months: lossMonths(fleet),
    census,
    alike: alikeIn(census),
  };
}

/** How a pair was over its log: where it stands, how much of the time it had a ready partner, and its flapping. */
function stateOf(
  { timeline }: PairFacts,
  flapping: ReadonlyMap<string, readonly Finding[]>,
): Pick<PairReview, 'site' | 'availability' | 'flapping'> {
  const { pair, site } = timeline;
  return { site, availability: availabilityOf(timeline), flapping: flapping.get(pair) ?? [] };
}

/** Names of firmware, and of models, that may be one. */
function alikeIn(census: Fleet['census']): Fleet['alike'] {
  return (['firmware', 'model'] as const).flatMap((signal) =>
    alikeNames(census.flatMap((c) => (c.signal === signal && c.value !== null ? [c.value] : []))),
  );
}

function groupOf(
  attempt: BringUp,
  by: Fleet['by'],
  sites: ReadonlyMap<string, string | null>,
): string | null {
  return by === 'site' ? (sites.get(attempt.pair) ?? null) : attempt[by];
}
