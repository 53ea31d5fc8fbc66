/**
 * Probability that at least `count` of some independent events happen, each of its own chance (0 to 1); exact far out in the
 * tail, as only positive terms are added. Source: the recursion over the events, one at a time; Johnson, Kemp and Kotz,
 * Univariate Discrete Distributions (2005), section 3.12.2 (from memory).
 */
export function atLeastOf(chances: readonly number[], count: number): number {
  if (count <= 0) return 1;
  // At place k: exactly k events so far; at the last one: `count` or more.
  const reached = new Float64Array(count + 1);
  reached[0] = 1;
  for (const chance of chances) {
    reached[count] = (reached[count] ?? 0) + (reached[count - 1] ?? 0) * chance;
    for (let k = count - 1; k > 0; k -= 1)
      reached[k] = (reached[k] ?? 0) * (1 - chance) + (reached[k - 1] ?? 0) * chance;
    reached[0] = (reached[0] ?? 0) * (1 - chance);
  }
  return Math.min(1, reached[count] ?? 0);
}
