import { describe, expect, test } from 'vitest';
import { between, judge } from '../../../src/timeline/durations.ts';
import { secondsOf, stamp } from '../../support/pair-facts.ts';

const said = (...both: Parameters<typeof between>): string => {
  const duration = between(...both);
  return `${duration.seconds} (${secondsOf(duration)})`;
};

describe('a duration', () => {
  test('between two entries is exact', () => {
    expect(said(stamp('10:00:00'), stamp('10:02:00.500'))).toBe('120.5 (120.5)');
  });

  test('between changes that polls saw reaches from the nearest bounds to the farthest', () => {
    expect(said(stamp('10:00:10', '10:00:00'), stamp('10:02:00', '10:01:50'))).toBe('110 (100-120)');
    expect(said(stamp('10:00:00'), stamp('10:02:00', '10:01:50'))).toBe('120 (110-120)');
    expect(said(stamp('10:00:10', '10:00:00'), stamp('10:00:10', '10:00:00'))).toBe('0 (0-10)');
  });

  test('that rests on whole seconds may be a second shorter or longer', () => {
    expect(said(stamp('10:00:00', '10:00:00', 1000), stamp('10:02:00'))).toBe('120 (119-121)');
    expect(said(stamp('10:00:00'), stamp('10:02:00', '10:02:00', 1000))).toBe('120 (119-121)');
    expect(said(stamp('10:00:00', '10:00:00', 1000), stamp('10:00:00', '10:00:00', 1000))).toBe('0 (0-1)');
  });

  test('is never negative', () => {
    expect(said(stamp('10:00:05'), stamp('10:00:00'))).toBe('0 (0)');
    expect(said(stamp('10:00:20', '10:00:00'), stamp('10:00:10', '10:00:05'))).toBe('0 (0-10)');
  });
});

describe('a limit', () => {
  test.each([
    [290, 300, 'within'],
    [300, 300, 'within'],
    [290, 300.001, 'inconclusive'],
    [300, 310, 'inconclusive'],
    [300.001, 310, 'exceeded'],
    [290, null, 'inconclusive'],
    [300.001, null, 'exceeded'],
  ] as const)('of 300 s against %s s to %s s: %s', (low, high, outcome) => {
    expect(judge(low, high, 300)).toBe(outcome);
  });
});
