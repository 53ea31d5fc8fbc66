import { describe, expect, test } from 'vitest';
import { addSpan, medianSpan, noSpacing } from '../../../../src/import/changes/spacing.ts';

/** The median of some spans in milliseconds; `isAsked`: it is asked for after each of them. */
function medianOf(spans: readonly number[], isAsked = false): number {
  const spacing = noSpacing();
  for (const span of spans) {
    addSpan(spacing, span);
    if (isAsked) medianSpan(spacing);
  }
  return medianSpan(spacing);
}

describe('the median of spans', () => {
  test('is the shortest at which half of them are reached', () => {
    expect(medianOf([])).toBe(0);
    expect(medianOf([10_000, 10_000, 10_000])).toBe(10_000);
    expect(medianOf([12_000, 10_000, 11_000])).toBe(11_000);
    expect(medianOf([10_000, 20_000])).toBe(10_000);
  });

  test('counts each span at its own length, where shorter ones follow longer ones too', () => {
    // Three of four are 14 s long.
    expect(medianOf([14_000, 14_000, 14_000, 13_000])).toBe(14_000);
    expect(medianOf([14_000, 13_000, 14_000, 13_000, 14_000])).toBe(14_000);
  });

  test('is the same, no matter how often it was asked for', () => {
    const spans = [14_000, 15_000, 13_000, 14_000, 13_000, 13_000, 15_000, 14_000, 14_000];
    expect(medianOf(spans, true)).toBe(14_000);
    expect(medianOf(spans)).toBe(14_000);
  });
});
