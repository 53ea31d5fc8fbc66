/** How far apart the readings of a stream are: a histogram of bounded size, so that a long poll costs no memory. */
export interface Spacing {
  readonly counts: Map<number, number>;
  /** As it was added last, as it is counted, and how often since. */
  added: number;
  counted: number;
  run: number;
}

/** Nothing yet. */
export function noSpacing(): Spacing {
  return { counts: new Map(), added: Number.NaN, counted: -1, run: 0 };
}

/** Adds a span in milliseconds, of so many readings; most are as long as the one before. */
export function addSpan(spacing: Spacing, milliseconds: number, readings = 1): void {
  if (milliseconds === spacing.added) spacing.run += readings;
  else addOther(spacing, milliseconds, readings);
}

/** Median in milliseconds, to three significant digits; 0 without any. */
export function medianSpan(spacing: Spacing): number {
  flush(spacing);
  const sorted = [...spacing.counts.entries()].sort((a, b) => a[0] - b[0]);
  const total = sorted.reduce((sum, [, count]) => sum + count, 0);
  let seen = 0;
  for (const [value, count] of sorted) {
    seen += count;
    if (seen * 2 >= total) return value;
  }
  return 0;
}

function addOther(spacing: Spacing, milliseconds: number, readings: number): void {
  if (milliseconds <= 0) return;
  const rounded = milliseconds < 1000 ? milliseconds : toThreeDigits(milliseconds);
  if (rounded !== spacing.counted) flush(spacing);
  spacing.added = milliseconds;
  spacing.counted = rounded;
  spacing.run += readings;
}

function flush(spacing: Spacing): void {
  const { counts, counted, run } = spacing;
  if (run > 0) counts.set(counted, (counts.get(counted) ?? 0) + run);
  spacing.run = 0;
}

function toThreeDigits(value: number): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 2);
  return Math.round(value / step) * step;
}
