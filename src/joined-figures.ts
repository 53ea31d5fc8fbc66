import { bareFile, type Renaming, renamedFile } from './renamed-figures.ts';
import { type ComparedPair, compareText, type SiteFigures } from './vocabulary.ts';

/** A site, in brief or whole. */
type Site<Pair> = Omit<SiteFigures, 'pairs'> & { readonly pairs: readonly Pair[] };

/**
 * The figures of several sites with names that hold for all of them, each in the order given. Of different files with one name at
 * several sites, those from a timeline or an archive are named after it too; pairs of one name at several sites bear the name of
 * theirs, as they do where all logs are read together.
 */
export function withCommonNames<Pair extends ComparedPair>(
  sites: readonly Site<Pair>[],
  renamed: (pair: Pair, renaming: Renaming) => Pair,
): readonly Site<Pair>[] {
  if (sites.length < 2) return sites;
  const files = filesShared(sites);
  const pairs = pairsShared(sites);
  return sites.map((site) => {
    const renaming = renamingOf(site, files, pairs);
    if (renaming.files.size + renaming.pairs.size === 0) return site;
    return {
      ...site,
      files: site.files.map((file) => renamedFile(file, renaming)),
      pairs: site.pairs.map((pair) => renamed(pair, renaming)),
    };
  });
}

/** All pairs of several sites, in the order of their names. */
export function pairsInOrder<Pair extends ComparedPair>(sites: readonly Site<Pair>[]): readonly Pair[] {
  return sites.flatMap((site) => site.pairs).sort((a, b) => compareText(a.pair, b.pair));
}

/** The name of a pair without that of its site. */
export function barePair({ pair, site }: Pick<ComparedPair, 'pair' | 'site'>): string {
  const suffix = ` at ${site ?? ''}`;
  return site !== null && pair.endsWith(suffix) ? pair.slice(0, -suffix.length) : pair;
}

/** Names of files that more than one site has. */
function filesShared(sites: readonly Pick<SiteFigures, 'files'>[]): ReadonlySet<string> {
  return namedTwice(sites.map(({ files }) => files.flatMap(({ input }) => [input.file, bareFile(input)])));
}

/** Names of pairs that several sites have. */
function pairsShared(sites: readonly Site<ComparedPair>[]): ReadonlySet<string> {
  const known = new Map<string, Set<string>>();
  for (const pair of sites.flatMap((site) => site.pairs)) {
    const name = barePair(pair);
    const own = known.get(name) ?? new Set();
    if (pair.site !== null) known.set(name, own.add(pair.site));
  }
  return new Set([...known].flatMap(([name, own]) => (own.size > 1 ? [name] : [])));
}

function namedTwice(lists: readonly (readonly string[])[]): ReadonlySet<string> {
  const names = new Set<string>();
  const twice = new Set<string>();
  for (const list of lists) for (const name of new Set(list)) (names.has(name) ? twice : names).add(name);
  return twice;
}

function renamingOf(
  { files, pairs }: Site<ComparedPair>,
  filesTwice: ReadonlySet<string>,
  pairsTwice: ReadonlySet<string>,
): Renaming {
  return {
    files: new Map(
      files.flatMap(({ input: { file, container } }) => {
        const name = container === undefined ? file : `${container.file}/${bareFile({ file, container })}`;
        return filesTwice.has(file) && name !== file ? [[file, name] as const] : [];
      }),
    ),
    pairs: new Map(
      pairs.flatMap((own) => {
        const bare = barePair(own);
        const name = `${bare} at ${own.site ?? ''}`;
        return own.site !== null && pairsTwice.has(bare) && name !== own.pair
          ? [[own.pair, name] as const]
          : [];
      }),
    ),
  };
}
