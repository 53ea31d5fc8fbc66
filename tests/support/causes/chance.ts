import { seeded } from '../../../samples/random.ts';

/** What a story draws from chance; the same for the same seed. */
export interface Chance {
  between(low: number, high: number): number;
  whole(low: number, high: number): number;
  pick<T>(first: T, ...rest: readonly T[]): T;
  /** True in so many of a hundred cases. */
  percent(share: number): boolean;
  /** A time of the given median; half of all lie within a factor of `e^(0.67 spread)` of it. */
  around(median: number, spread: number): number;
}

export function chanceOf(seed: number): Chance {
  const random = seeded(Math.imul(seed + 1, 0x2545f491));
  const between = (low: number, high: number): number => low + (high - low) * random();
  const whole = (low: number, high: number): number => Math.floor(between(low, high + 1));
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  return {
    between,
    whole,
    pick: (first, ...rest) => {
      const place = whole(0, rest.length);
      return place === 0 ? first : (rest[place - 1] ?? first);
    },
    percent: (share) => random() * 100 < share,
    around: (median, spread) => median * Math.exp(spread * normal()),
  };
}
