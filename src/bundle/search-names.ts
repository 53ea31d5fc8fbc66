import { nameFinder } from './find-names.ts';
import type { StandIn } from './stand-ins.ts';

/** Looks through bytes that come in pieces. */
export interface NameSearch {
  push(bytes: Uint8Array): void;
  /** A name that was found; `null`: none. */
  end(): string | null;
}

/** So much of a text is looked at again with what follows it: no name is longer. */
const carried = 512;
const encodings = ['utf-8', 'windows-1252', 'utf-16le', 'utf-16be'] as const;

/** A name that is in a text; `null`: none. Names of letters and digits are found within words too. */
export function nameLeft(names: readonly StandIn[]): (text: string) => string | null {
  const find = nameFinder(names);
  const anywhere = names.filter(isUnlikeWords).map(({ original }) => original.toLowerCase());
  return (text) => {
    const [found] = find(text);
    if (found !== undefined) return found.name.original;
    const folded = text.toLowerCase();
    return anywhere.find((name) => folded.includes(name)) ?? null;
  };
}

/** What no word and no hash holds by chance. */
function isUnlikeWords({ original, isExact }: StandIn): boolean {
  if (isExact || original.length < 5 || /^\p{L}+$/u.test(original) || /^\p{N}+$/u.test(original))
    return false;
  return original.length >= 8 || !/^[0-9a-f]+$/i.test(original);
}

/** Looks for names in bytes, as text in every encoding that a log may have. */
export function searchNames(left: (text: string) => string | null): NameSearch {
  const all = encodings.map((label) => ({
    decoder: new TextDecoder(label),
    rest: '',
    isWide: label.startsWith('utf-16'),
  }));
  let found: string | null = null;
  const look = (text: string, isLast: boolean): string => {
    found ??= left(isLast ? text : text.slice(0, Math.max(0, lastBreak(text))));
    return text.slice(lastBreak(text.slice(0, Math.max(0, text.length - carried))));
  };
  return {
    push(bytes) {
      const hasZeros = bytes.includes(0);
      for (const one of all) {
        if (found !== null || (one.isWide && !hasZeros && one.rest === '')) continue;
        one.rest = look(one.rest + one.decoder.decode(bytes, { stream: true }), false);
      }
    },
    end() {
      for (const { rest } of all) look(rest, true);
      return found;
    },
  };
}

/** Where the last line or word of a text ends: nothing is cut within a name. */
function lastBreak(text: string): number {
  const line = text.lastIndexOf('\n');
  return line >= 0 ? line + 1 : text.lastIndexOf(' ') + 1;
}
