import { seededRandom, shuffle } from './seeded-random.ts';

/**
 * The exponentially weighted moving average after each of some values in their order; `weight` is the share of the newest, above
 * 0 to 1, `target` the average before the first. Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.4.
 */
export function ewma(values: readonly number[], weight: number, target: number): readonly number[] {
  const averages: number[] = [];
  let average = target;
  for (const value of values) {
    average = weight * value + (1 - weight) * average;
    averages.push(average);
  }
  return averages;
}

/** What is usual: the mean of the first half of some values in their order; two at least. */
export function usualOf(values: ArrayLike<number>): number {
  const count = Math.floor(values.length / 2);
  let sum = 0;
  for (let index = 0; index < count; index += 1) sum += values[index] ?? 0;
  return sum / count;
}

/** How wide limits are to be: the share of orders in which the average may leave them, and how many orders to try. */
export interface Shuffling {
  readonly weight: number;
  readonly significance: number;
  readonly rounds: number;
  readonly seed: number;
}

/**
 * How far the moving average may stray from what is usual: in so many orders of the very same values it strays farther in at
 * most the share `significance`. If the order says nothing, the order seen is one of them, so limits this far on either side
 * of what is usual are left anywhere in at most that share of cases, no matter what the distribution of the values, and though what
 * is usual is known from these values alone: the handbook's limits of three standard deviations are those of a known mean
 * and deviation, normal values and one average. Needs two values. The same values give the same reach. Source: permutation
 * tests by drawn orders, Davison and Hinkley, Bootstrap Methods and their Application (1997), section 4.3 (from memory).
 */
export function reachInAnyOrder(
  values: readonly number[],
  { weight, significance, rounds, seed }: Shuffling,
): number {
  const orders = Math.max(rounds, Math.ceil(1 / significance)) - 1;
  const next = seededRandom(seed);
  const shuffled = Float64Array.from(values);
  const reaches = new Float64Array(orders).map(() => {
    shuffle(shuffled, next);
    return reachOf(shuffled, weight);
  });
  // Of these and the order seen, so many may stray farther; 1e-9 is for shares that binary fractions miss.
  const beyond = Math.floor((orders + 1) * significance + 1e-9);
  return reaches.sort().at(-beyond) ?? Number.POSITIVE_INFINITY;
}

function reachOf(values: Float64Array, weight: number): number {
  const target = usualOf(values);
  let average = target;
  let reach = 0;
  for (const value of values) {
    average = weight * value + (1 - weight) * average;
    reach = Math.max(reach, Math.abs(average - target));
  }
  return reach;
}
