import { normalQuantileAt } from './distributions.ts';

/** A time in seconds: how long something took, or (censored) how long it was watched without having ended. */
export interface Watched {
  readonly seconds: number;
  readonly isCensored: boolean;
}

/** The share still unfinished just after `seconds`, with its limits; they are `null` once nothing is left. */
export interface SurvivalStep {
  readonly seconds: number;
  readonly surviving: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** A quantile in seconds with its limits; `null` where the curve or its band does not get there. */
export interface SurvivalQuantile {
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * The share unfinished after each time at which something ended, ascending; empty if nothing ended. What is censored at
 * the time of an end still counts as watched then. Limits are pointwise, Greenwood's variance on the scale log(-log);
 * `confidence` as 0.95. Sources: Kaplan and Meier, Journal of the American Statistical Association 53 (1958);
 * Kalbfleisch and Prentice, The Statistical Analysis of Failure Time Data (1980), section 1.3 (from memory).
 */
export function kaplanMeier(times: readonly Watched[], confidence = 0.95): readonly SurvivalStep[] {
  const deviate = normalQuantileAt((1 + confidence) / 2);
  const sorted = [...times].sort((a, b) => a.seconds - b.seconds);
  const steps: SurvivalStep[] = [];
  let surviving = 1;
  let greenwood = 0;
  let index = 0;
  while (index < sorted.length) {
    const seconds = sorted[index]?.seconds ?? 0;
    const watched = sorted.length - index;
    let ended = 0;
    for (; index < sorted.length && sorted[index]?.seconds === seconds; index += 1)
      if (sorted[index]?.isCensored === false) ended += 1;
    if (ended === 0) continue;
    surviving *= (watched - ended) / watched;
    greenwood += ended / (watched * (watched - ended));
    steps.push({ seconds, surviving, ...logLogLimits(surviving, deviate * Math.sqrt(greenwood)) });
  }
  return steps;
}

/** Limits `S^exp(reach / -ln S)` and `S^exp(reach / ln S)`: they never leave 0 to 1. */
function logLogLimits(surviving: number, reach: number): Pick<SurvivalStep, 'low' | 'high'> {
  if (surviving === 0) return { low: null, high: null };
  const width = reach / -Math.log(surviving);
  return { low: surviving ** Math.exp(width), high: surviving ** Math.exp(-width) };
}

/**
 * The time by which `share` (0.5 for the median) has ended: the first at which the curve is down to `1 - share`, and its
 * limits where the band is. Source: Brookmeyer and Crowley, Biometrics 38 (1982), from memory.
 */
export function survivalQuantile(steps: readonly SurvivalStep[], share: number): SurvivalQuantile {
  // A product of fractions misses a round share in its last digits.
  const left = 1 - share + 1e-12;
  const first = (at: (step: SurvivalStep) => number | null): number | null =>
    steps.find((step) => (at(step) ?? 1) <= left)?.seconds ?? null;
  return {
    value: first((step) => step.surviving),
    // Where nothing is left the band has no figure, yet its lower edge is no higher than the curve.
    low: first((step) => step.low ?? step.surviving),
    high: first((step) => step.high),
  };
}
