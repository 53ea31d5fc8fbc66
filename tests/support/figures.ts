import { expect } from 'vitest';

/** Every number in a result, however deep. */
function numbersIn(result: unknown): readonly number[] {
  if (typeof result === 'number') return [result];
  return typeof result === 'object' && result !== null ? Object.values(result).flatMap(numbersIn) : [];
}

/** Fails if any number in a result is NaN or infinite. */
export function expectFigures(result: unknown): void {
  expect(numbersIn(result).filter((value) => !Number.isFinite(value))).toEqual([]);
}

/** Fails if the figures, those that are `null` left out, do not ascend (but for rounding). */
export function expectOrder(...figures: readonly (number | null | undefined)[]): void {
  const known = figures.filter((figure) => typeof figure === 'number');
  for (const [index, figure] of known.slice(1).entries())
    expect(figure).toBeGreaterThanOrEqual((known[index] ?? 0) - 1e-9 * Math.abs(figure));
}
