/** A class, a repeat, the opening of a group, a switch of flags, or one character. */
const token = /\\[\s\S]|\[\^?\]?(?:\\[\s\S]|\[:\^?\w+:\]|[^\\\]])*\]|\{[^}]*\}|\((?:\?[^):>]*[:>)])?|[\s\S]/g;

/** Nobody writes a longer one, and to take it apart would cost more than to run it. */
const longestSource = 2000;
/** To search for more would cost more than to run the pattern. */
const mostWords = 40;

/** Runs of plain letters of which one at least stands in any text that fits; empty where nothing is known. */
type Words = readonly string[];

/** A part of a pattern between two brackets. */
interface Part {
  /** What each of its branches needs but for the last. */
  readonly branches: Words[];
  /** What tells most of what the last branch needs, as far as it was read. */
  best: Words;
  /** The plain letters just read. */
  run: string;
}

/**
 * Runs of ASCII letters, figures and blanks, in lower case, of which any text holds one at least if the pattern fits it; empty
 * where there are none certainly. What stands in classes and in what may be missing does not count.
 */
export function requiredWords(source: string): Words {
  if (source.length > longestSource || /\\[pPxQC\d]/.test(source)) return [];
  const parts: Part[] = [emptyPart()];
  let closed: Words = [];
  for (const [found] of source.matchAll(token)) {
    const part = parts.at(-1);
    if (part === undefined) return [];
    // What follows a switch of flags is about what stands before it.
    if (found.startsWith('(?') && found.endsWith(')')) continue;
    const mayBeMissing = /^[*?{]/.test(found);
    // A group is there certainly unless what follows says that it may be there no time at all.
    if (!mayBeMissing) part.best = tellingMore(part.best, closed);
    closed = [];
    if (/^[A-Za-z0-9 _-]$/.test(found)) {
      part.run += found;
      continue;
    }
    endRun(part, mayBeMissing ? part.run.slice(0, -1) : part.run);
    if (found === '|') {
      part.branches.push(part.best);
      part.best = [];
    }
    if (found.startsWith('(')) parts.push(emptyPart());
    if (found === ')') closed = wordsOf(parts.pop());
  }
  const [whole] = parts;
  if (whole === undefined || parts.length > 1) return [];
  whole.best = tellingMore(whole.best, closed);
  return wordsOf(whole);
}

function emptyPart(): Part {
  return { branches: [], best: [], run: '' };
}

function endRun(part: Part, run: string): void {
  if (run !== '') part.best = tellingMore(part.best, [run.toLowerCase()]);
  part.run = '';
}

/** Which branch it is nobody knows: one word of any of them. */
function wordsOf(part: Part | undefined): Words {
  if (part === undefined) return [];
  endRun(part, part.run);
  const all = [...part.branches, part.best];
  const words = [...new Set(all.flat())];
  return all.some((branch) => branch.length === 0) || words.length > mostWords ? [] : words;
}

/** The longer their shortest, the fewer texts hold one of them. */
function tellingMore(one: Words, other: Words): Words {
  return shortestOf(other) > shortestOf(one) ? other : one;
}

function shortestOf(words: Words): number {
  return words.length === 0 ? 0 : Math.min(...words.map((word) => word.length));
}

/** True unless the text certainly holds none of the words that a pattern requires. */
export function mayHold(folded: string, words: Words): boolean {
  return words.length === 0 || words.some((word) => folded.includes(word));
}

/** A text as required words are searched in it: letters that any folding of case makes alike are alike. */
export function foldedCase(text: string): string {
  return text.toUpperCase().toLowerCase();
}
