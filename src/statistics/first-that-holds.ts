/** The index of the first item that holds, by bisection: once one holds, all that follow must. Their number where none does. */
export function firstThatHolds<T>(items: readonly T[], holds: (item: T) => boolean): number {
  let [from, to] = [0, items.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    const item = items[middle];
    if (item !== undefined && holds(item)) to = middle;
    else from = middle + 1;
  }
  return from;
}
