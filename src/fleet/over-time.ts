import { ewma } from '../statistics/ewma.ts';
import { groupBy } from '../timeline/groups.ts';
import type { BringUp, SyncDrift } from '../vocabulary.ts';
import type { FleetLimits } from './limits.ts';

/**
 * The sync times of each group and cause in the order of their starts, smoothed, against what was usual in the first half
 * of them: where the average leaves its limits the times drift. Groups with fewer exact times than `leastDrift` are left
 * out. Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.4.
 */
export function syncDrifts(
  attempts: readonly BringUp[],
  groupOf: (attempt: BringUp) => string | null,
  limits: FleetLimits,
): readonly SyncDrift[] {
  const exact = attempts.flatMap((attempt) => {
    const { seconds, low, high, censored } = attempt.sync;
    return seconds === null || censored || low !== high ? [] : [{ attempt, seconds }];
  });
  const groups = groupBy(exact, ({ attempt }) => `${groupOf(attempt) ?? 'not known'}\n${attempt.cause}`);
  return [...groups.values()].flatMap((own) => {
    const [first] = own;
    if (first === undefined || own.length < limits.leastDrift) return [];
    const inOrder = [...own].sort((a, b) => a.attempt.start.time - b.attempt.start.time);
    const usual = inOrder.slice(0, Math.floor(inOrder.length / 2)).map((o) => o.seconds);
    const target = meanOf(usual);
    const smoothed = ewma(
      inOrder.map((o) => o.seconds),
      { weight: limits.ewma.weight, width: limits.ewma.width, target, deviation: deviationOf(usual, target) },
    );
    const points = inOrder.map(({ attempt, seconds }, index) => ({
      pair: attempt.pair,
      time: attempt.start.time,
      seconds,
      average: smoothed.averages[index] ?? target,
      isOutside: smoothed.outside.includes(index),
    }));
    const group = groupOf(first.attempt) ?? 'not known';
    return [{ group, cause: first.attempt.cause, target, low: smoothed.low, high: smoothed.high, points }];
  });
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function deviationOf(values: readonly number[], mean: number): number {
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
