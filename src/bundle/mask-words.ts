import type { Name, NamePlace } from './find-names.ts';
import { nameFinder } from './find-names.ts';
import { scalarsIn, type YamlScalar } from './inside.ts';
import { inCaseOf, type StandIn, type StandInMaker } from './stand-ins.ts';

/** A text with every name replaced. */
export function masker(names: readonly StandIn[]): (text: string) => string {
  const find = nameFinder(names);
  return (text) => {
    const places: readonly NamePlace<StandIn>[] = find(text);
    if (places.length === 0) return text;
    const parts: string[] = [];
    let at = 0;
    for (const { from, to, name } of places) {
      parts.push(text.slice(at, from), inCaseOf(name.standIn, text.slice(from, to)));
      at = to;
    }
    return parts.join('') + text.slice(at);
  };
}

/** What is made for a name, by its kind: words of pairs, units, sites and people are the same in all their names. */
export function standInFor(name: Name, maker: StandInMaker, isKept: (word: string) => boolean): string {
  const { kind, original } = name;
  if (kind === 'address') return maker.address(original);
  if (kind === 'serial' || kind === 'work order' || !/\p{L}/u.test(original)) return maker.fresh(original);
  if (kind !== 'unit') return maker.withWords(original);
  return original.replace(/\p{L}+/gu, (word) => (isKept(word) ? word : maker.withWords(word)));
}

/** The places of a phrasebook that name files and units: parts of names may stand in their patterns, such as `RO\d`. */
function namesUnits({ path: [key = '', second = '', third = '', fourth = ''] }: YamlScalar): boolean {
  if (key === 'units' || key === 'ignoreUnits') return true;
  if (key === 'files') return ['match', 'unit', 'path', 'line', 'header'].includes(third);
  if (key === 'parameters') return second.startsWith('/');
  return key === 'messages' && third === 'only' && (fourth === 'unit' || fourth === 'file');
}

/** A phrasebook in whose patterns of units the words of names are replaced as they are in the names. */
export function withWordsMasked(text: string, words: ReadonlySet<string>, maker: StandInMaker): string {
  const parts: string[] = [];
  let at = 0;
  for (const scalar of scalarsIn('phrasebook.yaml', text)) {
    if (!namesUnits(scalar) || scalar.from < at) continue;
    const said = text.slice(scalar.from, scalar.to);
    const masked = said.replace(/(?<!\\)\p{L}{2,}/gu, (word) =>
      words.has(word.toLowerCase()) ? inCaseOf(maker.word(word), word) : word,
    );
    parts.push(text.slice(at, scalar.from), masked);
    at = scalar.to;
  }
  return parts.join('') + text.slice(at);
}
