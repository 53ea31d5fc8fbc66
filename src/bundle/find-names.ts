/** What kind of thing a name is of. */
export type NameKind = 'pair' | 'unit' | 'serial' | 'site' | 'person' | 'work order' | 'user' | 'address';

/** A name that is to be masked. */
export interface Name {
  readonly kind: NameKind;
  readonly original: string;
  /** Only to the letter: in another case it is an ordinary word. */
  readonly isExact: boolean;
}

/** Where a name stands in a text. */
export interface NamePlace<N extends Name> {
  readonly from: number;
  readonly to: number;
  readonly name: N;
}

const letter = /\p{L}/u;
const lower = /\p{Ll}/u;
const upper = /\p{Lu}/u;
const digit = /\p{N}/u;

/** Finds names in texts, in any case, the longest where several begin at one place. */
export function nameFinder<N extends Name>(names: readonly N[]): (text: string) => readonly NamePlace<N>[] {
  const byStart = new Map<string, { readonly name: N; readonly folded: string }[]>();
  for (const name of names) {
    const start = startOf(name.original);
    const all = byStart.get(start) ?? [];
    all.push({ name, folded: name.original.toLowerCase() });
    byStart.set(start, all);
  }
  for (const all of byStart.values()) all.sort((a, b) => b.folded.length - a.folded.length);
  // Most of a log holds none: where one may stand is found by one pattern of them all.
  const anywhere = names.map(({ original }) => original.replace(/[.*+?^${}()|[\]\\/-]/g, '\\$&'));
  const pattern = new RegExp(anywhere.join('|'), 'gi');
  return (text) => {
    const found: NamePlace<N>[] = [];
    if (names.length === 0) return found;
    pattern.lastIndex = 0;
    for (let at = pattern.exec(text); at !== null; at = pattern.exec(text)) {
      const from = at.index;
      const starting = [text.slice(from, from + 2), text.slice(from, from + 1)].flatMap(
        (start) => byStart.get(startOf(start)) ?? [],
      );
      const one = isBoundary(text, from) ? starting.find((name) => standsAt(text, from, name)) : undefined;
      pattern.lastIndex = one === undefined ? from + 1 : from + one.folded.length;
      if (one !== undefined) found.push({ from, to: pattern.lastIndex, name: one.name });
    }
    return found;
  };
}

function startOf(text: string): string {
  return text.slice(0, 2).toLowerCase();
}

function standsAt(
  text: string,
  from: number,
  { name, folded }: { readonly name: Name; readonly folded: string },
): boolean {
  const to = from + folded.length;
  const said = text.slice(from, to);
  if (name.isExact ? said !== name.original : said.toLowerCase() !== folded) return false;
  if (!isBoundary(text, to)) return false;
  return /^\d+$/.test(folded) ? !isPartOfNumber(text, from, to) : true;
}

/** True if no word and no number goes on from the character before to the one at this place: "report" holds no pair PORT. */
function isBoundary(text: string, at: number): boolean {
  const [before = '', after = ''] = [text[at - 1], text[at]];
  if (digit.test(before)) return !digit.test(after);
  if (!letter.test(before) || !letter.test(after)) return true;
  return lower.test(before) && upper.test(after);
}

/** Digits that are part of a time, a date or a decimal number are no serial. */
function isPartOfNumber(text: string, from: number, to: number): boolean {
  return (
    /\d[.,:/-]$/.test(text.slice(Math.max(0, from - 2), from)) || /^[.,:/-]\d/.test(text.slice(to, to + 2))
  );
}
