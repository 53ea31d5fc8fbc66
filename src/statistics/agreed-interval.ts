/** A closed interval. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
}

/** The values that most of some intervals allow, and how many do. */
export interface Agreed extends Bounds {
  readonly count: number;
}

/**
 * The first interval that the greatest number of intervals contain, in their unit; `null` without any. `low <= high` in
 * each. Source: Mills et al., Network Time Protocol Version 4, RFC 5905 (2010), section 11.2.1, which builds on Marzullo's
 * algorithm: sort the ends, count up at each low end and down past each high end.
 */
export function agreedInterval(intervals: readonly Bounds[]): Agreed | null {
  const ends = intervals
    .flatMap(({ low, high }) => [
      { at: low, step: 1 },
      { at: high, step: -1 },
    ])
    // Intervals that only touch share that point: low ends come first.
    .sort((a, b) => a.at - b.at || b.step - a.step);
  let count = 0;
  let best: Agreed | null = null;
  for (const [index, { at, step }] of ends.entries()) {
    count += step;
    if (step === 1 && count > (best?.count ?? 0)) best = { low: at, high: ends[index + 1]?.at ?? at, count };
  }
  return best;
}
