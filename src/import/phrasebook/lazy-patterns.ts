import { compilePattern, type Pattern } from './patterns.ts';
import { foldedCase, mayHold, requiredWords } from './required-words.ts';

/** Compiles a pattern once a text holds what it needs; the reason as text if it is not valid. */
export type PatternCompiler = (source: string, ignoreCase: boolean) => Pattern | string;

/** Letters, figures and blanks stand for themselves: which they are makes no difference to whether a pattern is valid. */
const piece =
  /\\[^pPQxCE\d]|\[\^?\]?(?:\\[^pPQxCE\d]|[^\\\]])*\]|\(\?[^)>:]*[>:)]|[A-Za-z0-9 _]+|[^\\[{A-Za-z0-9 _]/y;

/**
 * A compiler of many patterns, for a phrasebook of thousands: those that differ in their plain words alone are valid alike,
 * and only the first of them is compiled at once. Source of the need: 20,000 patterns take two seconds.
 */
export function patternCompiler(): PatternCompiler {
  const known = new Map<string, Pattern | string>();
  const fold = lastFolded();
  return (source, ignoreCase) => {
    const skeleton = skeletonOf(source);
    if (skeleton === null) return compilePattern(source, ignoreCase);
    const alike = known.get(skeleton) ?? compilePattern(skeleton, ignoreCase);
    known.set(skeleton, alike);
    // The reason names the part that is wrong: it must be that of this pattern.
    if (typeof alike === 'string') return compilePattern(source, ignoreCase);
    return lazily(source, ignoreCase, alike.groups, fold);
  };
}

/** A compiler of patterns that are known to be valid, such as those that come with the program: none is compiled before it is needed. */
export function trustingCompiler(): PatternCompiler {
  const fold = lastFolded();
  return (source, ignoreCase) => lazily(source, ignoreCase, namesIn(source), fold);
}

function namesIn(source: string): readonly string[] {
  return [...source.matchAll(/\(\?P?<(\w+)>/g)].map(([, name = '']) => name);
}

/** Nobody writes a longer one. */
const longestSource = 2000;

/** The pattern with one letter for each run of plain words; `null` where it holds what cannot be told by its parts. */
function skeletonOf(source: string): string | null {
  if (source.length > longestSource) return null;
  let skeleton = '';
  piece.lastIndex = 0;
  for (let at = 0; at < source.length; at = piece.lastIndex) {
    piece.lastIndex = at;
    const found = piece.exec(source)?.[0];
    if (found === undefined) return null;
    skeleton += /^[A-Za-z0-9 _]/.test(found) ? 'a' : found;
  }
  return skeleton;
}

/** A text with its case folded; that of the text before is kept, since many patterns ask for the same one. */
function lastFolded(): (text: string) => string {
  let last = '';
  let folded = '';
  return (text) => {
    if (text !== last) [last, folded] = [text, foldedCase(text)];
    return folded;
  };
}

function lazily(
  source: string,
  ignoreCase: boolean,
  groups: readonly string[],
  fold: (text: string) => string,
): Pattern {
  const words = requiredWords(source);
  let compiled: Pattern | string | undefined;
  return {
    source,
    groups,
    match(text) {
      if (!mayHold(fold(text), words)) return null;
      compiled ??= compilePattern(source, ignoreCase);
      // Its like was valid.
      if (typeof compiled === 'string') throw new Error(`The pattern ${source} is not valid: ${compiled}.`);
      return compiled.match(text);
    },
  };
}
