import { expect, test } from 'vitest';
import { sayLonger, sayNames, sayObserved } from '../../../src/report/fleet-words.ts';

test.each([
  [['RO1'], 'RO1'],
  [['RO1', 'RO2'], 'RO1 and RO2'],
  [['RO1', 'RO2', 'RO3'], 'RO1, RO2 and RO3'],
  [['A', 'B', 'C', 'D', 'E'], 'A, B, C, D and E'],
  [['A', 'B', 'C', 'D', 'E', 'F', 'G'], 'A, B, C, D, E and 2 more'],
])('names %j as a sentence does, of many the first', (names, said) => {
  expect(sayNames(names)).toBe(said);
});

test.each([
  [36_300, '10 h 05 min'],
  [86_399, '24 h 00 min'],
  [86_400, '1 d'],
  [730 * 86_400, '730 d'],
])('%d observed seconds are said as they can be read', (seconds, said) => {
  expect(sayObserved(seconds)).toBe(said);
});

test.each([
  [{ value: 12.4, low: 3, high: 20.6 }, '12 s (3 to 21), p = 0.02'],
  [{ value: -12, low: -33, high: -0.2 }, '-12 s (-33 to 0), p = 0.02'],
])('a trend of %j seconds a year is said with its limits and its chance', (secondsPerYear, said) => {
  expect(sayLonger({ months: 9, secondsPerYear, p: 0.02 })).toBe(said);
});
