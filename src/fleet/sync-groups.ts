import { intervalLogRank } from '../statistics/interval-log-rank.ts';
import { kaplanMeier, survivalQuantile } from '../statistics/kaplan-meier.ts';
import { logRank } from '../statistics/log-rank.ts';
import { quantileLimits } from '../statistics/quantile-limits.ts';
import { survivalLimits } from '../statistics/survival-limits.ts';
import { upperToleranceLimit } from '../statistics/tolerance-limit.ts';
import { type Between, turnbull, turnbullQuantile } from '../statistics/turnbull.ts';
import { groupBy } from '../timeline/groups.ts';
import {
  type BringUp,
  type BringUpCause,
  compareText,
  type Estimate,
  type Fleet,
  type GroupReview,
  type SurvivalPoint,
} from '../vocabulary.ts';
import { chanceOfSmallGroups } from './dealt-groups.ts';
import type { FleetLimits } from './limits.ts';
import { sharedTrends, syncTrend } from './sync-trend.ts';

/** The sync time of one attempt, known between two bounds in seconds; `high` is `Infinity` where it was not seen. */
export interface SyncTime extends Between {
  readonly group: string;
  readonly cause: BringUpCause;
  /** When the attempt began. */
  readonly start: number;
}

/** The sync times of bring-ups, each with its group; those of which nothing is known are left out. */
export function syncTimes(
  attempts: readonly BringUp[],
  groupOf: (attempt: BringUp) => string | null,
): readonly SyncTime[] {
  return attempts.flatMap((attempt) => {
    const { seconds, low, high, censored } = attempt.sync;
    if (seconds === null) return [];
    const group = groupOf(attempt) ?? 'not known';
    const bounds = censored
      ? { low: low ?? seconds, high: Number.POSITIVE_INFINITY }
      : { low: low ?? seconds, high: high ?? seconds };
    return [{ group, cause: attempt.cause, start: attempt.start.time, ...bounds }];
  });
}

/** The distribution of sync times per group and cause. */
export function groupReviews(times: readonly SyncTime[], limits: FleetLimits): readonly GroupReview[] {
  const reviews = [...groupBy(times, (t) => `${t.group}\n${t.cause}`).values()].flatMap((own) => {
    const [first] = own;
    return first === undefined ? [] : [reviewOf(first, own, limits)];
  });
  return [...sharedTrends(reviews)].sort((a, b) =>
    a.group === b.group ? compareText(a.cause, b.cause) : compareText(a.group, b.group),
  );
}

function reviewOf({ group, cause }: SyncTime, own: readonly SyncTime[], limits: FleetLimits): GroupReview {
  const censored = own.filter((t) => t.high === Number.POSITIVE_INFINITY).length;
  const tolerance = upperToleranceLimit(
    own.map((t) => t.high),
    { coverage: 0.95, confidence: 0.95 },
  );
  return {
    group,
    cause,
    attempts: own.length,
    censored,
    ...(isExact(own) ? exactCurve(own) : boundedCurve(own)),
    tolerance9595: tolerance.value,
    neededFor9595: tolerance.needed,
    trend: syncTrend(own, limits),
  };
}

interface Curve {
  readonly median: Estimate;
  readonly p95: Estimate;
  readonly survival: readonly SurvivalPoint[];
}

function isExact(times: readonly Between[]): boolean {
  return times.every((t) => t.low === t.high || t.high === Number.POSITIVE_INFINITY);
}

/** Times that are known exactly, or were not seen to end: Kaplan-Meier with Greenwood's limits. */
function exactCurve(times: readonly Between[]): Curve {
  const steps = kaplanMeier(
    times.map((t) => ({ seconds: t.low, isCensored: t.high === Number.POSITIVE_INFINITY })),
  );
  return { median: survivalQuantile(steps, 0.5), p95: survivalQuantile(steps, 0.95), survival: steps };
}

/**
 * Times known between two readings: Turnbull's estimate, of which each value is the far end of the place in which it
 * lies, the one that can be promised. Limits are free of any distribution: whatever the readings left open widens them.
 */
function boundedCurve(times: readonly Between[]): Curve {
  const { places } = turnbull(times);
  const quantile = (share: number): Estimate => ({
    value: turnbullQuantile(places, share).high,
    ...quantileLimits(times, share),
  });
  const band = survivalLimits(times);
  const survival = places.flatMap(({ high, survivingAfter }) =>
    high === null ? [] : [{ seconds: high, surviving: survivingAfter, ...band(high) }],
  );
  return { median: quantile(0.5), p95: quantile(0.95), survival };
}

/** Whether the groups become ready alike, each cause compared within itself. */
export function compareGroups(times: readonly SyncTime[], limits: FleetLimits): Fleet['logRank'] {
  const strata = [...groupBy(times, (t) => t.cause).values()];
  const found = isExact(times)
    ? logRank(
        strata.map((own) =>
          own.map((t) => ({
            group: t.group,
            seconds: t.low,
            isCensored: t.high === Number.POSITIVE_INFINITY,
          })),
        ),
      )
    : intervalLogRank(strata);
  if (found === null) return null;
  const { chiSquare, df, p } = found;
  return { chiSquare, df, p: chanceOfSmallGroups(strata, limits.dealing) ?? p };
}
