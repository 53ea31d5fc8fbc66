import { bootstrapSums } from '../statistics/bootstrap.ts';
import type { BringUp, Fleet } from '../vocabulary.ts';
import type { FleetLimits } from './limits.ts';

const hourSeconds = 3600;
/** A swap replaces the modules of both halves. */
const modulesOfSwap = 2;

/**
 * How many hours the bring-ups of the next swaps take, each of two modules, drawn with return from the reflashes that
 * became ready and held; `steps` lead there from one swap on. `null` without a reflash or without a swap. It is the time
 * of bring-up alone: people and permits are not in the logs.
 */
export function forecastOf(
  attempts: readonly BringUp[],
  swaps: number,
  { forecast }: FleetLimits,
): Fleet['forecast'] {
  const hours = attempts.flatMap((a) =>
    a.cause === 'reflash' && a.settledSeconds !== null ? [a.settledSeconds / hourSeconds] : [],
  );
  const counts = stepsTo(swaps, forecast.steps);
  const sums = bootstrapSums(
    hours,
    counts.map((count) => count * modulesOfSwap),
    forecast,
  );
  const steps = sums.map(({ median, low, high }, index) => ({
    swaps: counts[index] ?? swaps,
    hours: median,
    low,
    high,
  }));
  const last = steps.at(-1);
  return last === undefined ? null : { ...last, steps };
}

/** Whole numbers up to the last, evenly apart, at most so many. */
function stepsTo(last: number, most: number): readonly number[] {
  const count = Math.min(last, most);
  return Array.from({ length: count }, (_, index) => Math.round(((index + 1) * last) / count));
}
