/**
 * The p-values adjusted for how many were looked at, in the order given: calling those at most 0.05 keeps the expected
 * share of false calls among the calls within 5 %. Source: Benjamini and Hochberg, Controlling the False Discovery Rate,
 * Journal of the Royal Statistical Society B 57 (1995), from memory: the least `p * count / rank` from this rank on.
 */
export function benjaminiHochberg(pValues: readonly number[]): readonly number[] {
  const descending = [...pValues.keys()].sort((a, b) => (pValues[b] ?? 0) - (pValues[a] ?? 0));
  const adjusted = pValues.map(() => 1);
  let least = 1;
  for (const [index, position] of descending.entries()) {
    least = Math.min(least, ((pValues[position] ?? 1) * pValues.length) / (pValues.length - index));
    adjusted[position] = least;
  }
  return adjusted;
}
