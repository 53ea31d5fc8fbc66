import type { BriefSite } from './brief-figures.ts';
import { InputError } from './import/bytes/input-error.ts';
import { barePair } from './joined-figures.ts';
import { type ComparedPair, compareText } from './vocabulary.ts';

/** The figures of a site, and what they were given as: a file of figures, or timelines and logs that were read just now. */
export interface SitesGiven {
  readonly name: string;
  readonly isStored: boolean;
  readonly figures: BriefSite;
}

/**
 * The sites of which every pair is known by one of them alone, in the order given. Figures that are given twice count once. Of
 * those that speak of one pair and do not say the same a file of figures is left out, the later one where both are such: `failures`
 * say so, one for each file.
 */
export function withoutRepeated<Site extends SitesGiven>(
  given: readonly Site[],
): {
  readonly kept: readonly Site[];
  readonly failures: readonly InputError[];
} {
  const known = new Map<string, { readonly name: string; readonly pair: ComparedPair }[]>();
  const kept = new Set<Site>();
  const failures = new Map<string, InputError>();
  // What was read just now is whole; figures are held against it.
  const inTurn = [...given].sort((a, b) => Number(a.isStored) - Number(b.isStored));
  for (const site of inTurn) {
    const { pairs } = site.figures;
    const others = pairs.map((pair) => (known.get(barePair(pair)) ?? []).find((k) => meet(k.pair, pair)));
    const misfit = pairs.findIndex((pair, index) => {
      const other = others[index];
      return other !== undefined && !areAlike(other.pair, pair);
    });
    const [pair, other] = [pairs[misfit], others[misfit]];
    if (pair !== undefined && other !== undefined) {
      if (!failures.has(site.name)) failures.set(site.name, repeated(site.name, pair, other.name));
      continue;
    }
    if (pairs.length > 0 && others.every((o) => o !== undefined)) continue;
    kept.add(site);
    for (const own of pairs) {
      const list = known.get(barePair(own)) ?? [];
      list.push({ name: site.name, pair: own });
      known.set(barePair(own), list);
    }
  }
  return { kept: given.filter((site) => kept.has(site)), failures: [...failures.values()] };
}

/** Two pairs of one name are one unless each is said to be of another site. */
function meet(a: ComparedPair, b: ComparedPair): boolean {
  return a.site === null || b.site === null || a.site === b.site;
}

function areAlike(a: ComparedPair, b: ComparedPair): boolean {
  return JSON.stringify(a, inOneOrder) === JSON.stringify(b, inOneOrder);
}

/** The keys of an object in the order of their names: figures that were read back have another. */
function inOneOrder(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([one], [other]) => compareText(one, other)));
}

function repeated(name: string, { pair, site }: ComparedPair, other: string): InputError {
  const which = site === null ? `a pair ${pair}` : `the pair ${pair} of ${site}`;
  return new InputError(
    name,
    `it contains other figures of ${which} than ${other}, and figures of one pair cannot be combined.`,
    'Make them from all its timelines at once, or name the sites in the phrasebook.',
  );
}
