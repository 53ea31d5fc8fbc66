import { chiSquareAtMost } from './distributions.ts';

/** A power-law process: `scale * t^shape` events expected by time t. */
export interface PowerLaw {
  /** Above 1 events come more and more often, below 1 less and less; freed of its bias. `null` for fewer than two events. */
  readonly shape: number | null;
  readonly scale: number | null;
  /** Mean time between events at the end, in the unit of the times. */
  readonly meanTimeAtEnd: number | null;
  /** The military handbook's test: high where events come ever further apart. */
  readonly chiSquare: number;
  readonly df: number;
  /** Two-sided: chance of a trend as marked if there were none. */
  readonly p: number;
}

/**
 * Fits a power-law process (Crow-AMSAA) to events since observation began, up to `end`, and tests it against none:
 * `2 * sum(ln(T / t))` is chi-square with 2n degrees of freedom. `null` without an event, or where one lies outside
 * 0 to `end` (0 left out), or where all lie at the end. Sources: MIL-HDBK-189 (1981), from memory; NIST/SEMATECH e-Handbook of
 * Statistical Methods, sections 8.2.3.4 (test) and 8.4.5.2 (estimate `(n - 1) / sum(ln(T / t))`).
 */
export function powerLawTrend(times: readonly number[], end: number): PowerLaw | null {
  const count = times.length;
  if (count === 0 || times.some((time) => !(time > 0 && time <= end))) return null;
  const sum = times.reduce((total, time) => total + Math.log(end / time), 0);
  if (!(sum > 0 && sum < Infinity)) return null;
  const df = 2 * count;
  const atMost = chiSquareAtMost(2 * sum, df);
  const test = { chiSquare: 2 * sum, df, p: Math.min(1, 2 * Math.min(atMost, 1 - atMost)) };
  if (count < 2) return { shape: null, scale: null, meanTimeAtEnd: null, ...test };
  const shape = (count - 1) / sum;
  const scale = count / end ** shape;
  const meanTimeAtEnd = end / (count * shape);
  return { shape: finite(shape), scale: finite(scale), meanTimeAtEnd: finite(meanTimeAtEnd), ...test };
}

/** Events all but at the end give a shape too steep for a figure. */
function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
