import { gammaQuantileAt } from './distributions.ts';
import type { Counted } from './rate-ratio.ts';

/** A figure with its limits. */
export interface Limits {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * A Poisson rate, events per unit of the exposure, with exact central limits; `confidence` as 0.95. `null` without
 * exposure. Source: Garwood, Fiducial Limits for the Poisson Distribution, Biometrika 28 (1936).
 */
export function poissonLimits({ count, exposure }: Counted, confidence = 0.95): Limits | null {
  if (!(exposure > 0)) return null;
  const tail = (1 - confidence) / 2;
  return {
    value: count / exposure,
    low: count === 0 ? 0 : gammaQuantileAt(tail, count) / exposure,
    high: gammaQuantileAt(1 - tail, count + 1) / exposure,
  };
}
