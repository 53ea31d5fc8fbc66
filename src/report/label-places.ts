/**
 * Where labels stand so that none covers another: each at its own value or as near as may be, at least `least` apart
 * and none above `highest`; in the order of the values. Where there is no room for all, the lowest go below 0.
 */
export function labelPlaces(values: readonly number[], least: number, highest: number): readonly number[] {
  const order = values.map((_, index) => index).sort((a, b) => (values[a] ?? 0) - (values[b] ?? 0) || a - b);
  const placed = [...values];
  let lowest = Number.NEGATIVE_INFINITY;
  for (const index of order) {
    placed[index] = Math.max(values[index] ?? 0, lowest);
    lowest = (placed[index] ?? 0) + least;
  }
  let top = highest;
  for (const index of order.toReversed()) {
    placed[index] = Math.min(placed[index] ?? 0, top);
    top = (placed[index] ?? 0) - least;
  }
  return placed;
}
