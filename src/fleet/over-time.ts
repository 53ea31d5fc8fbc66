import { ewma, reachInAnyOrder, usualOf } from '../statistics/ewma.ts';
import { groupBy } from '../timeline/groups.ts';
import type { ComparedBringUp, SyncDrift } from '../vocabulary.ts';
import type { FleetLimits } from './limits.ts';

/**
 * The sync times of each group and cause in the order of their starts, smoothed, against what was usual in the first half
 * of them: where the average leaves its limits the times drift. Groups with fewer exact times than `leastDrift` are left
 * out. If in every group the order says nothing, any average of any group leaves its limits in at most `significance` of
 * fleets: the groups share it (Bonferroni). Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.4; the
 * limits are those of `reachInAnyOrder`.
 */
export function syncDrifts(
  attempts: readonly ComparedBringUp[],
  groupOf: (attempt: ComparedBringUp) => string | null,
  limits: FleetLimits,
): readonly SyncDrift[] {
  const exact = attempts.flatMap((attempt) => {
    const { seconds, low, high, censored } = attempt.sync;
    return seconds === null || censored || low !== high ? [] : [{ attempt, seconds }];
  });
  const groups = groupBy(exact, ({ attempt }) => `${groupOf(attempt) ?? 'not known'}\n${attempt.cause}`);
  const judged = [...groups.values()].filter((own) => own.length >= limits.leastDrift);
  return judged.flatMap((own) => {
    const [first] = own;
    if (first === undefined) return [];
    const group = groupOf(first.attempt) ?? 'not known';
    return [{ group, cause: first.attempt.cause, ...driftOf(own, judged.length, limits) }];
  });
}

interface TimedAttempt {
  readonly attempt: ComparedBringUp;
  readonly seconds: number;
}

function driftOf(
  own: readonly TimedAttempt[],
  groups: number,
  { ewma: { weight, significance, rounds, mostSteps, seed } }: FleetLimits,
): Omit<SyncDrift, 'group' | 'cause'> {
  const inOrder = [...own].sort((a, b) => a.attempt.start.time - b.attempt.start.time);
  const values = inOrder.map((o) => o.seconds);
  const target = usualOf(values);
  const reach = reachInAnyOrder(values, {
    weight,
    significance: significance / groups,
    rounds: Math.min(rounds, Math.ceil(mostSteps / values.length)),
    seed,
  });
  const averages = ewma(values, weight, target);
  const points = inOrder.map(({ attempt, seconds }, index) => {
    const average = averages[index] ?? target;
    const isOutside = Math.abs(average - target) > reach;
    return { pair: attempt.pair, time: attempt.start.time, seconds, average, isOutside };
  });
  return { target, low: target - reach, high: target + reach, points };
}
