import { normalBeyond } from './distributions.ts';

/** Rising pairs less falling ones, and what that says; `p` two-sided, by the normal approximation. */
export interface MannKendall {
  readonly score: number;
  readonly variance: number;
  readonly z: number;
  readonly p: number;
}

/**
 * Whether values, in the order of time, tend to rise or fall. Ties lower the variance; the score is moved by 1 towards 0.
 * `null` for fewer than two values. Source: US EPA, QA/G-9S, Data Quality Assessment: Statistical Methods for
 * Practitioners (2006), the example of p. 109.
 */
export function mannKendall(values: readonly number[]): MannKendall | null {
  const count = values.length;
  if (count < 2) return null;
  let score = 0;
  for (const [index, value] of values.entries())
    for (const later of values.slice(index + 1)) score += later === value ? 0 : later > value ? 1 : -1;
  const ties = new Map<number, number>();
  for (const value of values) ties.set(value, (ties.get(value) ?? 0) + 1);
  const spread = (size: number): number => size * (size - 1) * (2 * size + 5);
  const variance = [...ties.values()].reduce((rest, size) => rest - spread(size), spread(count)) / 18;
  const z = variance === 0 ? 0 : (score - Math.sign(score)) / Math.sqrt(variance);
  return { score, variance, z, p: normalBeyond(z) };
}
