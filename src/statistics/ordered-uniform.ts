/**
 * The chance that ordered independent uniform values on 0 to 1 each lie within bounds of their own: as many values as
 * bounds, both bounds ascending, 0 and 1 for none. Exact: the number of values passed grows from bound to bound like a Poisson process
 * that ends at their number; all terms are positive, so nothing cancels. Source: Noe, The Calculation of Distributions of
 * Two-Sided Kolmogorov-Smirnov Type Statistics, Annals of Mathematical Statistics 43 (1972) (from memory), in the Poisson form of
 * Moscovich and Nadler, Statistics and Probability Letters 123 (2017), section 2 (from memory).
 */
export function withinBounds(bounds: readonly { readonly low: number; readonly high: number }[]): number {
  const count = bounds.length;
  const places = [...new Set([...bounds.flatMap(({ low, high }) => [low, high]), 1])]
    .filter((place) => place > 0 && place <= 1)
    .sort((a, b) => a - b);
  let chances = [1, ...new Array<number>(count).fill(0)];
  let [from, least, most] = [0, 0, 0];
  for (const place of places) {
    const arrivals = poissonChances(count * (place - from), count);
    // So many have come by this place at least, and at most, if all are within their bounds.
    while (least < count && (bounds[least]?.high ?? 1) <= place && place < 1) least += 1;
    while (most < count && (bounds[most]?.low ?? 0) < place) most += 1;
    chances = grown(chances, arrivals, place === 1 ? count : least, most);
    from = place;
  }
  return Math.min(1, (chances[count] ?? 0) / (poissonChances(count, count)[count] ?? 1));
}

/** The chances of each number, after arrivals; those outside `least` to `most` are cut off. */
function grown(
  chances: readonly number[],
  arrivals: readonly number[],
  least: number,
  most: number,
): number[] {
  const next = new Array<number>(chances.length).fill(0);
  for (const [number, chance] of chances.entries()) {
    if (chance === 0) continue;
    const last = Math.min(most, number + arrivals.length - 1);
    for (let to = Math.max(number, least); to <= last; to += 1)
      next[to] = (next[to] ?? 0) + chance * (arrivals[to - number] ?? 0);
  }
  return next;
}

/** Chances of 0, 1, 2, ... arrivals, up to those that are too small to count and at most `most`. */
function poissonChances(mean: number, most: number): readonly number[] {
  const chances = [Math.exp(-mean)];
  for (let number = 1; number <= most; number += 1) {
    const chance = ((chances[number - 1] ?? 0) * mean) / number;
    if (number > mean && chance < 1e-20) break;
    chances.push(chance);
  }
  return chances;
}
