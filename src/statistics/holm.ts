/**
 * The p-values adjusted for how many questions were asked, in the order given: calling those at most 0.01 makes a false call
 * in at most one of a hundred cases, no matter what the questions have to do with each other. Source: Holm, A Simple Sequentially
 * Rejective Multiple Test Procedure, Scandinavian Journal of Statistics 6 (1979), from memory: the greatest
 * `p * (count - rank + 1)` up to this rank, the least p first.
 */
export function holm(pValues: readonly number[]): readonly number[] {
  const ascending = [...pValues.keys()].sort((a, b) => (pValues[a] ?? 1) - (pValues[b] ?? 1));
  const adjusted = pValues.map(() => 1);
  let greatest = 0;
  for (const [index, position] of ascending.entries()) {
    greatest = Math.max(greatest, (pValues[position] ?? 1) * (pValues.length - index));
    adjusted[position] = Math.min(1, greatest);
  }
  return adjusted;
}
