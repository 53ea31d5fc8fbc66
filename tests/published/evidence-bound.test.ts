/**
 * Source: Sellke, Bayarri and Berger, The American Statistician 55 (2001), Table 1 (from memory): lower bounds of the
 * Bayes factor -e p ln p of 0.870, 0.625, 0.407, 0.125, 0.072, 0.0188 for p of 0.2, 0.1, 0.05, 0.01, 0.005, 0.001.
 * Tolerance: half a unit of the last place as remembered.
 */
import { describe, expect, test } from 'vitest';
import { decibans, evidenceBound } from '../../src/statistics/evidence-bound.ts';

describe('evidence bound of a p-value', () => {
  test.each([
    [0.2, 0.87, 0.006],
    [0.1, 0.625, 0.0015],
    [0.05, 0.407, 0.0006],
    [0.01, 0.125, 0.0006],
    [0.005, 0.072, 0.0006],
    [0.001, 0.0188, 0.00006],
  ])('p %f', (p, printed, tolerance) => {
    expect(Math.abs(1 / evidenceBound(p) - printed)).toBeLessThan(tolerance);
  });
  test('it is 1 from 1/e on; ten to one are ten decibans', () => {
    expect(evidenceBound(0.5)).toBe(1);
    expect(decibans(10)).toBeCloseTo(10, 12);
  });
});
