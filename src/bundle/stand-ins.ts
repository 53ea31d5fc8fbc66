import type { Name } from './find-names.ts';

/** A name, and what stands in its place: as long, letters for letters, digits for digits. */
export interface StandIn extends Name {
  readonly standIn: string;
}

const letters = 'bcdfghjkmnpqrtvwxz';
const hexLetters = 'abcdef';

/** Makes stand-ins; none is like one before. They do not depend on what a name is, only on its shape and its place in the list. */
export interface StandInMaker {
  /** Letters for the letters of a word, in small letters; the same each time for the same word. */
  word(word: string): string;
  /** Of a name whose digits may stay: those of a pair or unit that has letters. */
  withWords(text: string): string;
  /** Of any other. */
  fresh(text: string): string;
  address(text: string): string;
  /** Gives another one for the words of a stand-in that turned out to be taken. */
  forget(text: string): void;
}

export function standInMaker(): StandInMaker {
  const words = new Map<string, string>();
  const taken = new Set<string>();
  let state = 20_260_314;
  // A linear congruential generator. Source: Numerical Recipes, 3rd edition (2007), section 7.1.1 (quick and dirty).
  const next = (below: number): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
  const pick = (from: string): string => from[next(from.length)] ?? '';
  const unlike = (make: () => string): string => {
    for (let tries = 0; ; tries += 1) {
      const made = make();
      if (taken.has(made.toLowerCase()) && tries < 1000) continue;
      taken.add(made.toLowerCase());
      return made;
    }
  };
  const word = (given: string): string => {
    const folded = given.toLowerCase();
    const known = words.get(folded);
    if (known !== undefined) return known;
    const made = unlike(() =>
      [...folded].map((sign) => sign.replace(/./gsu, () => pick(letters).repeat(sign.length))).join(''),
    );
    words.set(folded, made);
    return made;
  };
  const changed = (text: string, of: string): string =>
    text.replace(/[\p{L}\p{N}]/gu, (sign) =>
      (/\p{N}/u.test(sign) ? pick('0123456789') : inCase(pick(of), sign)).repeat(sign.length),
    );
  return {
    word,
    withWords: (text) => text.replace(/\p{L}+/gu, (run) => inCaseOf(word(run), run)),
    fresh: (text) => unlike(() => changed(text, letters)),
    address: (text) => unlike(() => (isEmail(text) ? changed(text, letters) : changedAddress(text, pick))),
    forget(text) {
      for (const [run] of text.matchAll(/\p{L}+/gu)) words.delete(run.toLowerCase());
    },
  };
}

function isEmail(text: string): boolean {
  return text.includes('@');
}

/** Numbers of an IPv4 address stay below 256 and have no leading zero; signs of others stay hexadecimal. */
function changedAddress(text: string, pick: (from: string) => string): string {
  if (/^\d+(?:\.\d+){3}$/.test(text))
    return text.replace(/\d+/g, (part) => {
      const first = part.length === 3 ? '1' : pick('123456789');
      return [first, ...[...part.slice(1)].map(() => pick('0123456789'))].join('');
    });
  return text.replace(/[0-9A-Fa-f]/g, (sign) =>
    /\d/.test(sign) ? pick('0123456789') : inCase(pick(hexLetters), sign),
  );
}

function inCase(sign: string, like: string): string {
  return like === like.toUpperCase() && like !== like.toLowerCase() ? sign.toUpperCase() : sign;
}

/** A stand-in with the capitals of the place that it stands in. */
export function inCaseOf(standIn: string, said: string): string {
  let out = '';
  for (let at = 0; at < standIn.length; at += 1)
    out += inCase(standIn[at]?.toLowerCase() ?? '', said[at] ?? '');
  return out;
}
