/**
 * Source: Zar, Biostatistical Analysis (5th edition, 2010), example 27.1, page 667, with the angles of example 26.2: z is
 * 5.448, the probability between 0.001 and 0.002 (read at second hand); r is 0.82522 and the mean angle 99 degrees (from
 * memory). Tolerance: half a unit of the printed last place.
 * The second sample is a documented example of another implementation of the same approximation: five angles in
 * thousandths of a radian, z 1.236, p 0.304844. Tolerance: half a unit of the printed last place.
 */
import { expect, test } from 'vitest';
import { rayleigh } from '../../src/statistics/rayleigh.ts';

test('eight angles that gather at 99 degrees', () => {
  const { direction, length, p } = rayleigh([45, 55, 81, 96, 110, 117, 132, 154].map((a) => a / 360));
  expect(8 * length ** 2).toBeCloseTo(5.448, 3);
  expect(length).toBeCloseTo(0.82522, 5);
  expect(Math.round(direction * 360)).toBe(99);
  expect(p).toBeGreaterThan(0.001);
  expect(p).toBeLessThan(0.002);
});

test('five angles that do not gather', () => {
  const { length, p } = rayleigh([785, 1570, 3141, 839, 5934].map((a) => a / 2000 / Math.PI));
  expect(5 * length ** 2).toBeCloseTo(1.236, 3);
  expect(p).toBeCloseTo(0.304844, 6);
});

// By hand: four angles a quarter turn apart cancel out; the mean of 350 and 10 degrees is 0, not 180.
test('angles all around have no direction, and the turn closes on itself', () => {
  expect(rayleigh([0, 0.25, 0.5, 0.75]).length).toBeCloseTo(0, 12);
  expect(rayleigh([0, 0.25, 0.5, 0.75]).p).toBe(1);
  const { direction } = rayleigh([350 / 360, 10 / 360]);
  expect(Math.min(direction, 1 - direction)).toBeCloseTo(0, 12);
});
