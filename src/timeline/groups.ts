/** One text for a half (or the pair) and a signal. */
export function keyOf(half: string | null, signal: string): string {
  return `${half ?? ''}\n${signal}`;
}

/** Items by half (or the pair) and signal, under the text of `keyOf`, each list in the order of the items. */
export function groupByTrack<T extends { readonly half: string | null; readonly signal: string }>(
  items: readonly T[],
): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  // The text is made once for each list, not for each item.
  const ofHalves = new Map<string, Map<string, T[]>>();
  for (const item of items) {
    const ofHalf = ofHalves.get(item.half ?? '') ?? new Map<string, T[]>();
    if (ofHalf.size === 0) ofHalves.set(item.half ?? '', ofHalf);
    const list = ofHalf.get(item.signal);
    if (list !== undefined) {
      list.push(item);
      continue;
    }
    const begun = [item];
    ofHalf.set(item.signal, begun);
    groups.set(keyOf(item.half, item.signal), begun);
  }
  return groups;
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
