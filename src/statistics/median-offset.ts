/** A typical difference, how far the differences scatter about it, and how many there are. */
export interface MedianOffset {
  readonly median: number;
  /** Median absolute deviation from the median. */
  readonly spread: number;
  readonly count: number;
}

/**
 * Median and median absolute deviation of some differences, in their unit; `null` without any. One mispaired event does
 * not move it. Source: Huber, Robust Statistics (1981), chapter 5 (from memory): median and MAD.
 */
export function medianOffset(differences: readonly number[]): MedianOffset | null {
  if (differences.length === 0) return null;
  const middle = median(differences);
  return {
    median: middle,
    spread: median(differences.map((d) => Math.abs(d - middle))),
    count: differences.length,
  };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)] ?? 0;
  const lower = sorted[Math.ceil(sorted.length / 2) - 1] ?? upper;
  return (lower + upper) / 2;
}
