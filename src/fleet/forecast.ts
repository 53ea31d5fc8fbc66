import { bootstrap } from '../statistics/bootstrap.ts';
import type { BringUp, Fleet } from '../vocabulary.ts';
import type { FleetLimits } from './limits.ts';

const hourSeconds = 3600;

/**
 * How many hours the bring-ups of the next swaps take, each of two modules, drawn with return from the reflashes that
 * became ready and held. `null` without one. It is the time of bring-up alone: people and permits are not in the logs.
 */
export function forecastOf(
  attempts: readonly BringUp[],
  swaps: number,
  limits: FleetLimits,
): Fleet['forecast'] {
  const seconds = attempts.flatMap((a) =>
    a.cause === 'reflash' && a.settledSeconds !== null ? [a.settledSeconds] : [],
  );
  const found = bootstrap(seconds, (drawn) => drawn.reduce((sum, s) => sum + s, 0) / hourSeconds, {
    ...limits.forecast,
    size: 2 * swaps,
  });
  return found === null ? null : { swaps, hours: found.median, low: found.low, high: found.high };
}
