import { describe, expect, test } from 'vitest';
import { fixedTimeOf, saySpread } from '../../../src/diagnose/fixed-time.ts';
import { defaultDiagnoseLimits } from '../../../src/diagnose/limits.ts';
import type { Duration } from '../../../src/vocabulary.ts';

const exactly = (seconds: number): Duration => ({ seconds, low: seconds, high: seconds });
/** By stamps of whole seconds. */
const about = (seconds: number): Duration => ({ seconds, low: seconds - 1, high: seconds + 1 });
const verdict = (...durations: readonly Duration[]): string | undefined =>
  fixedTimeOf(durations, defaultDiagnoseLimits)?.verdict;

describe('durations come at a fixed time', () => {
  test('where half of them lie within a tenth of their median', () => {
    // The median is 100 s, and the distances from it are 0, 10 and 10 s.
    expect(verdict(exactly(90), exactly(100), exactly(110))).toBe('fixed');
    expect(verdict(exactly(89.9), exactly(100), exactly(110.1))).toBe('scattered');
  });
  test('where their bounds leave no doubt of it, at their worst', () => {
    // Each within 99 and 101 s: at most 2 s from any median, and a tenth of the lowest median is 9.9 s.
    expect(verdict(about(100), about(100), about(100))).toBe('fixed');
    // Each within 9 and 11 s: they may be 2 s apart, more than a tenth of 9 s, or alike.
    expect(verdict(about(10), about(10), about(10))).toBe('too-coarse');
    expect(verdict(about(1), about(1), about(1))).toBe('too-coarse');
    // Medians between 99 and 101 s; the distances are at least 0, 38 and 38 s, and a tenth is 10.1 s.
    expect(verdict(about(60), about(100), about(140))).toBe('scattered');
  });
  test('never of two, or of what took no time', () => {
    expect(verdict(exactly(100), exactly(100))).toBeUndefined();
    expect(verdict(exactly(0), exactly(0), exactly(0))).toBe('too-coarse');
  });
  test('by the latest twenty', () => {
    const old = Array.from({ length: 15 }, () => exactly(300));
    const latest = Array.from({ length: 20 }, () => exactly(100));
    expect(fixedTimeOf([...old, ...latest], defaultDiagnoseLimits)).toMatchObject({
      count: 20,
      verdict: 'fixed',
      median: exactly(100),
      spreadSeconds: 0,
    });
  });
});

test('how alike they are is said where the stamps tell it', () => {
  const said = (...durations: readonly Duration[]): string => {
    const found = fixedTimeOf(durations, defaultDiagnoseLimits);
    return found === null ? '' : saySpread(found);
  };
  expect(said(exactly(90), exactly(100), exactly(110))).toBe(', half of them within 10 s of it');
  expect(said(about(1), about(1), about(1))).toBe(
    ': the timestamps are too coarse to tell whether that time is fixed',
  );
});

test('one of five may be of another kind: it weighs as the rest, and less by the ways to leave one out', () => {
  const weight = (...seconds: readonly number[]): number =>
    fixedTimeOf(seconds.map(exactly), defaultDiagnoseLimits)?.decibans ?? 0;
  // 100, 104, 108 and 112 s: pairs of them lie 4, 4, 4, 8, 8 and 12 s apart, 40 s in all; over 3 times their sum of 424 s that is a Gini
  // figure of 0.03145, three times that 0.0943, and its cube over 3! is 1.4e-4. Five ways to leave one out: 7.0e-4. The evidence
  // bound 1 / (-e p ln p) is 72.4, 18.6 decibans.
  expect(weight(100, 104, 108, 112, 900)).toBeCloseTo(18.6, 1);
  // One of four may not.
  expect(weight(100, 104, 108, 900)).toBeLessThan(defaultDiagnoseLimits.leadDecibans);
  // Nor two of nine.
  expect(weight(100, 104, 108, 112, 900, 20)).toBeLessThan(weight(100, 104, 108, 112, 900));
});
