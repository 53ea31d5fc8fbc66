import type { Random } from '../../samples/random.ts';

/** A standard normal number. Source: Box and Muller, Annals of Mathematical Statistics 29 (1958). */
export function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** An exponential number of mean 1. */
export function exponential(random: Random): number {
  return -Math.log(1 - random());
}

/** How durations are spread, in seconds about 100: one peak, light or heavy in its tail, or two. */
export const durations: Readonly<Record<string, (random: Random) => number>> = {
  lognormal: (random) => 100 * Math.exp(0.5 * normal(random)),
  // The sum of four exponential numbers: shape 4.
  gamma: (random) => 25 * [0, 0, 0, 0].reduce((sum) => sum + exponential(random), 0),
  // Three in ten twice as long as the rest; then one in four more than three times as long.
  bimodal: (random) => (random() < 0.3 ? 200 + 30 * normal(random) : 90 + 12 * normal(random)),
  'two far peaks': (random) => (random() < 0.25 ? 300 + 20 * normal(random) : 90 + 8 * normal(random)),
};
