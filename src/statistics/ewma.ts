/** How an exponentially weighted moving average is drawn. */
export interface Smoothing {
  /** Share of the newest value, above 0 to 1. */
  readonly weight: number;
  /** The average before the first value: what is usual. */
  readonly target: number;
  /** Standard deviation of single values. */
  readonly deviation: number;
  /** Limits this many standard deviations of the average from the target. */
  readonly width: number;
}

/** One average per value, and the limits which it keeps to while nothing has changed. */
export interface Ewma {
  readonly averages: readonly number[];
  readonly low: number;
  readonly high: number;
  /** Indexes of the averages outside the limits. */
  readonly outside: readonly number[];
}

/**
 * The exponentially weighted moving average of values in their order, with its limits for long series:
 * `target -+ width * deviation * sqrt(weight / (2 - weight))`.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.4.
 */
export function ewma(values: readonly number[], { weight, target, deviation, width }: Smoothing): Ewma {
  const reach = width * deviation * Math.sqrt(weight / (2 - weight));
  const [low, high] = [target - reach, target + reach];
  const averages: number[] = [];
  for (const value of values) averages.push(weight * value + (1 - weight) * (averages.at(-1) ?? target));
  const outside = [...averages.keys()].filter((index) => {
    const average = averages[index] ?? target;
    return average < low || average > high;
  });
  return { averages, low, high, outside };
}
