import {
  aalenJohansen,
  bandOf,
  type IncidenceStep,
  incidenceQuantile,
} from '../statistics/aalen-johansen.ts';
import { quantileLimits } from '../statistics/quantile-limits.ts';
import { survivalLimits } from '../statistics/survival-limits.ts';
import { upperToleranceLimit } from '../statistics/tolerance-limit.ts';
import { type Between, turnbull, turnbullQuantile } from '../statistics/turnbull.ts';
import { groupBy } from '../timeline/groups.ts';
import {
  type BringUpCause,
  type ComparedBringUp,
  compareText,
  type Estimate,
  type GroupReview,
  type SurvivalPoint,
} from '../vocabulary.ts';
import type { FleetLimits } from './limits.ts';
import { sharedTrends, syncTrend } from './sync-trend.ts';

/** The sync time of one attempt, known between two bounds in seconds; `high` is `Infinity` where it was not seen. */
export interface SyncTime extends Between {
  readonly group: string;
  readonly cause: BringUpCause;
  /** When the attempt began. */
  readonly start: number;
  /** What ended the watch; `superseded`: the next start, or a switchover onto the half, after which it could not become ready any more. */
  readonly end: 'ready' | 'superseded' | 'unfinished';
}

/** The sync times of bring-ups, each with its group; those of which nothing is known are left out. */
export function syncTimes(
  attempts: readonly ComparedBringUp[],
  groupOf: (attempt: ComparedBringUp) => string | null,
): readonly SyncTime[] {
  return attempts.flatMap((attempt): readonly SyncTime[] => {
    const { seconds, low, high, censored } = attempt.sync;
    if (seconds === null) return [];
    const { cause, start } = attempt;
    const own = { group: groupOf(attempt) ?? 'not known', cause, start: start.time, low: low ?? seconds };
    if (!censored) return [{ ...own, high: high ?? seconds, end: 'ready' }];
    const end = attempt.outcome === 'superseded' ? 'superseded' : 'unfinished';
    return [{ ...own, high: Number.POSITIVE_INFINITY, end }];
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
  const count = (end: SyncTime['end']): number => own.filter((t) => t.end === end).length;
  const tolerance = upperToleranceLimit(
    own.map((t) => t.high),
    { coverage: 0.95, confidence: 0.95 },
  );
  return {
    group,
    cause,
    attempts: own.length,
    censored: count('unfinished'),
    superseded: count('superseded'),
    ...(isExact(own) ? exactCurve(own) : boundedCurve(own)),
    tolerance9595: tolerance.value,
    neededFor9595: tolerance.needed,
    trend: syncTrend(
      own.filter((t) => t.end !== 'superseded'),
      limits,
    ),
  };
}

interface Curve {
  readonly median: Estimate;
  readonly p95: Estimate;
  readonly survival: readonly SurvivalPoint[];
}

/** True if no time lies between two readings. */
export function isExact(times: readonly SyncTime[]): boolean {
  return times.every((t) => t.low === t.high || t.end !== 'ready');
}

const ends = { ready: 'ended', superseded: 'competing', unfinished: 'censored' } as const;

/** Times that are known exactly, or were not seen to end: one curve of Aalen and Johansen with its limits. */
function exactCurve(times: readonly SyncTime[]): Curve {
  const steps = aalenJohansen(times.map((t) => ({ seconds: t.low, end: ends[t.end] })));
  return {
    median: incidenceQuantile(steps, 0.5),
    p95: incidenceQuantile(steps, 0.95),
    survival: worthDrawing(steps.filter((s) => s.isEnd)).map((step) => ({
      seconds: step.seconds,
      surviving: step.surviving,
      ...bandOf(step),
    })),
  };
}

/** The steps of a long curve that take it down by another hundredth, and the last: limits of each cost more than they show. */
function worthDrawing(steps: readonly IncidenceStep[]): readonly IncidenceStep[] {
  if (steps.length <= 100) return steps;
  let drawn = 1;
  return steps.filter(({ surviving }, index) => {
    const isDrawn = drawn - surviving >= 0.01 || index === steps.length - 1;
    if (isDrawn) drawn = surviving;
    return isDrawn;
  });
}

/**
 * Times known between two readings: Turnbull's estimate, of which each value is the far end of the place in which it
 * lies, the one that can be promised. A superseded attempt lies at the time it was watched for: between which readings it was
 * superseded moves nothing but what the few unfinished ones may still become. Limits are free of any distribution and of
 * any reason for which a watch ended: a superseded attempt was surely never ready, an unfinished one may have been so at once or
 * never, and what the readings left open widens them too.
 */
function boundedCurve(times: readonly SyncTime[]): Curve {
  const superseded = times.filter((t) => t.end === 'superseded');
  const { places } = turnbull(
    times.filter((t) => t.end !== 'superseded'),
    superseded.map((t) => t.low),
  );
  const known = times.map((t): Between => (t.end === 'superseded' ? never : t));
  const quantile = (share: number): Estimate => ({
    value: turnbullQuantile(places, share).high,
    ...quantileLimits(known, share),
  });
  const band = survivalLimits(known);
  const survival = places.flatMap(({ high, survivingAfter }) =>
    high === null ? [] : [{ seconds: high, surviving: survivingAfter, ...band(high) }],
  );
  return { median: quantile(0.5), p95: quantile(0.95), survival };
}

const never: Between = { low: Number.POSITIVE_INFINITY, high: Number.POSITIVE_INFINITY };
