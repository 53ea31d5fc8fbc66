import type { StoredPlace } from './stored-places.ts';

/**
 * Which files must be read together, as their places in the list: those of one site, and those that speak of one pair where it is
 * not said of which site it is. The groups in the order of their first files, the files of each in order. Files that name
 * different sites for all that they have in common never meet, so that each site can be read by itself.
 */
export function siteGroups(files: readonly (readonly StoredPlace[])[]): readonly (readonly number[])[] {
  const keys = files.map(keysIn(files.flat()));
  const roots = files.map((_, index) => index);
  const rootOf = (index: number): number => {
    let root = index;
    while (roots[root] !== root) root = roots[root] ?? root;
    roots[index] = root;
    return root;
  };
  const first = new Map<string, number>();
  for (const [index, own] of keys.entries())
    for (const key of own) {
      const other = rootOf(first.get(key) ?? index);
      first.set(key, other);
      const root = rootOf(index);
      roots[Math.max(root, other)] = Math.min(root, other);
    }
  const groups = new Map<number, number[]>();
  for (const index of files.keys()) {
    const root = rootOf(index);
    groups.set(root, [...(groups.get(root) ?? []), index]);
  }
  return [...groups.values()];
}

/** What makes two files meet. */
function keysIn(all: readonly StoredPlace[]): (places: readonly StoredPlace[]) => readonly string[] {
  // A unit that names no site may be at one that another unit of its pair names, read with the same phrasebook.
  const inBook = ({ pair, site }: StoredPlace): string => `book\n${site ?? ''}\n${pair}`;
  const unnamed = new Set(all.filter(({ unitSite }) => unitSite === null).map(inBook));
  const nowhere = new Set(all.flatMap((p) => ((p.unitSite ?? p.site) === null ? [p.pair] : [])));
  return (places) => [
    ...new Set(
      places.flatMap((place) => {
        const site = place.unitSite ?? place.site;
        return [
          ...(site === null ? [] : [`site\n${site}`]),
          ...(unnamed.has(inBook(place)) ? [inBook(place)] : []),
          ...(nowhere.has(place.pair) ? [`pair\n${place.pair}`] : []),
        ];
      }),
    ),
  ];
}
