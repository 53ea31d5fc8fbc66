/** How closely angles gather about one direction. */
export interface Rayleigh {
  /** The mean direction, a share of the turn, 0 to 1. */
  readonly direction: number;
  /** The length of the mean vector: 1 where all angles are equal, near 0 where they are spread evenly. */
  readonly length: number;
  /** Chance that as many angles, spread evenly, gather at least as closely. */
  readonly p: number;
}

/**
 * The Rayleigh test: do angles gather about one direction, or lie evenly around the circle? `turns` are shares of a full
 * turn, as a time of day is of the day; one at least. Source: Zar, Biostatistical Analysis (5th edition, 2010), section
 * 27.1, with its approximation of the probability.
 */
export function rayleigh(turns: readonly number[]): Rayleigh {
  const count = turns.length;
  const sum = (along: (angle: number) => number): number =>
    turns.reduce((total, turn) => total + along(2 * Math.PI * turn), 0);
  const [x, y] = [sum(Math.cos), sum(Math.sin)];
  const resultant = Math.min(count, Math.hypot(x, y));
  const direction = Math.atan2(y, x) / (2 * Math.PI);
  const apart = count ** 2 - resultant ** 2;
  return {
    direction: direction < 0 ? direction + 1 : direction,
    length: resultant / count,
    p: Math.min(1, Math.exp(Math.sqrt(1 + 4 * count + 4 * apart) - (1 + 2 * count))),
  };
}
