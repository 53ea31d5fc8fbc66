import type { Random } from '../../samples/random.ts';
import { exponential } from './made-timelines.ts';

/** What sync times are like: seconds. */
export const timeShapes = {
  'bell-shaped times': (random: Random) => 90 + 10 * bell(random),
  'skewed times': (random: Random) => 60 + exponential(random, 30),
  'whole 10 s': (random: Random) => 10 * Math.round(9 + 1.5 * bell(random)),
} as const;
export type TimeShape = keyof typeof timeShapes;

/** A normal variable with mean 0 and deviation 1. Source: Box and Muller, Annals of Mathematical Statistics 29 (1958). */
function bell(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
