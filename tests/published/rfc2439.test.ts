/**
 * Source: RFC 2439, BGP Route Flap Damping (1998), section 4.3 and Figure 1, columns 1 to 4 (figure of merit over time,
 * ceiling 4.5); the flap times are not printed there and were inferred on a grid of 0.01 half-lives.
 * Tolerance: 0.0006, half a unit of the printed last place and rounding.
 */
import { describe, expect, test } from 'vitest';
import { decay, figureOfMerit, secondsToReuse } from '../../src/statistics/figure-of-merit.ts';

const printedFourPerHalfLife = [1, 1.84, 2.55, 3.14, 3.64, 4.06, 4.42, 4.71, 4.96, 5.17];

const columns: readonly {
  readonly name: string;
  readonly flaps: readonly number[];
  readonly printed: readonly (readonly [number, number])[];
}[] = [
  {
    name: 'flap period 1/2',
    flaps: [0.49, 0.99, 1.49],
    printed: [
      [0.48, 0],
      [0.72, 0.853],
      [0.96, 0.722],
      [1.2, 1.476],
      [1.44, 1.25],
      [1.68, 1.935],
      [2.4, 1.175],
      [3.36, 0.604],
    ],
  },
  {
    name: 'flap period 1/3',
    flaps: [0.33, 0.66, 0.99, 1.33, 1.66],
    printed: [
      [0.48, 0.901],
      [0.72, 1.722],
      [0.96, 1.458],
      [1.2, 2.099],
      [1.44, 2.704],
      [1.68, 3.276],
      [2.4, 1.989],
      [3.36, 1.022],
    ],
  },
  {
    name: 'flap period 1/4',
    flaps: [0.24, 0.49, 0.74, 0.99, 1.24, 1.49, 1.74],
    printed: [
      [0.48, 0.847],
      [0.72, 1.57],
      [0.96, 2.188],
      [1.2, 2.717],
      [1.44, 3.171],
      [1.68, 3.562],
      [2.4, 2.795],
      [3.36, 1.437],
    ],
  },
  {
    name: 'flap period 1/8',
    flaps: [0.12, 0.24, 0.37, 0.49, 0.62, 0.74, 0.87, 0.99, 1.12, 1.24, 1.37, 1.49, 1.62, 1.74],
    printed: [
      [0.24, 0.92],
      [0.48, 2.552],
      [0.72, 3.947],
      [0.96, 4.228],
      [1.2, 4.257],
      [1.44, 4.287],
      [1.68, 4.317],
      [2.4, 2.848],
      [3.36, 1.464],
    ],
  },
];

describe('figure of merit, RFC 2439', () => {
  test('four flaps in a half-life give the printed figures', () => {
    const flaps = Array.from({ length: 10 }, (_, index) => index * 0.25);
    const figures = figureOfMerit(flaps, { halfLifeSeconds: 1, ceiling: Number.POSITIVE_INFINITY });
    figures.forEach((figure, index) => {
      expect(Math.abs(figure - (printedFourPerHalfLife[index] ?? Number.NaN))).toBeLessThan(0.0051);
    });
  });

  test.each(columns)('Figure 1, $name', ({ flaps, printed }) => {
    const damping = { halfLifeSeconds: 1, ceiling: 4.5 };
    const figures = figureOfMerit(flaps, damping);
    for (const [time, expected] of printed) {
      // A sample at the very instant of a flap is taken before it.
      const last = flaps.findLastIndex((flap) => flap < time);
      const computed = last < 0 ? 0 : decay(figures[last] ?? 0, time - (flaps[last] ?? 0), damping);
      expect(Math.abs(computed - expected)).toBeLessThan(0.0006);
    }
  });

  test('once per half-life the figure tends to 2 and never passes a cut-off of 2', () => {
    const flaps = Array.from({ length: 60 }, (_, index) => index);
    const figures = figureOfMerit(flaps, { halfLifeSeconds: 1, ceiling: Number.POSITIVE_INFINITY });
    expect(Math.max(...figures)).toBeLessThanOrEqual(2);
    expect(figures.at(-1)).toBeCloseTo(2, 9);
  });

  test('time to re-use is half-life times log2 of figure over re-use', () => {
    // From 3 to 0.75 it is two half-lives.
    expect(secondsToReuse(3, 0.75, { halfLifeSeconds: 900, ceiling: 12 })).toBeCloseTo(1800, 9);
    expect(secondsToReuse(0.7, 0.75, { halfLifeSeconds: 900, ceiling: 12 })).toBe(0);
  });
});
