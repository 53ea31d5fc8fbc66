import { normalQuantileAt } from './distributions.ts';
import { mannKendall } from './mann-kendall.ts';

/** A value at an instant; any units. */
export interface Point {
  readonly time: number;
  readonly value: number;
}

/** The slope per unit of time, with its limits; `null` where the sample is too small for one. */
export interface Slope {
  readonly slope: number;
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * The median of the slopes between all pairs of points, with limits from the variance of Mann and Kendall's score.
 * `null` where no two points differ in time. Sources: Sen, Journal of the American Statistical Association 63 (1968);
 * US EPA, Unified Guidance (2009), Example 17-6 (Sen from memory).
 */
export function theilSen(points: readonly Point[], confidence = 0.95): Slope | null {
  const ordered = [...points].sort((a, b) => a.time - b.time);
  const slopes = ordered
    .flatMap((first, index) => ordered.slice(index + 1).map((later) => slopeBetween(first, later)))
    .filter((slope) => Number.isFinite(slope))
    .sort((a, b) => a - b);
  const slope = atRank(slopes, (slopes.length + 1) / 2);
  if (slope === null) return null;
  const variance = mannKendall(ordered.map(({ value }) => value))?.variance ?? 0;
  const reach = normalQuantileAt((1 + confidence) / 2) * Math.sqrt(variance);
  return {
    slope,
    low: atRank(slopes, (slopes.length - reach) / 2),
    high: atRank(slopes, (slopes.length + reach) / 2 + 1),
  };
}

/** Not finite for two points of one time. */
function slopeBetween(first: Point, later: Point): number {
  return (later.value - first.value) / (later.time - first.time);
}

/** The value at a rank counted from 1, between two ranks in proportion. */
function atRank(sorted: readonly number[], rank: number): number | null {
  const below = sorted[Math.floor(rank) - 1];
  const above = sorted[Math.ceil(rank) - 1];
  if (below === undefined || above === undefined) return null;
  return below + (above - below) * (rank - Math.floor(rank));
}
