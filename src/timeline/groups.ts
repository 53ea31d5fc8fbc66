/** One text for a half (or the pair) and a signal. */
export function keyOf(half: string | null, signal: string): string {
  return `${half ?? ''}\n${signal}`;
}

/** Items by a key, each list in the order of the items. */
export function groupBy<T>(items: readonly T[], key: (item: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const name = key(item);
    const list = groups.get(name);
    if (list === undefined) groups.set(name, [item]);
    else list.push(item);
  }
  return groups;
}
