import { RE2JS, RE2JSException, RE2Set } from 're2js';
import { digitTest } from './digit-shapes.ts';

/** What a pattern found: its named groups, those that took part. */
export type Groups = Readonly<Record<string, string>>;

/** A compiled pattern. Any pattern runs in time linear in the text. */
export interface Pattern {
  readonly source: string;
  readonly groups: readonly string[];
  /** The named groups of the first match; `null` if there is none. */
  match(text: string): Groups | null;
}

/**
 * Compiles a pattern with an engine that cannot hang (automata, no backtracking). Gives the reason as text if the
 * pattern is not valid, or uses what such an engine cannot do (look-around, back-references).
 */
export function compilePattern(source: string, ignoreCase: boolean): Pattern | string {
  try {
    const compiled = RE2JS.compile(source, ignoreCase ? RE2JS.CASE_INSENSITIVE : 0);
    const names = Object.keys(compiled.namedGroups());
    return {
      source,
      groups: names,
      match(text: string) {
        const matcher = compiled.matcher(text);
        if (!matcher.find()) return null;
        const groups: Record<string, string> = {};
        for (const name of names) {
          const value = matcher.group(name);
          if (value !== null) groups[name] = value;
        }
        return groups;
      },
    };
  } catch (error) {
    if (error instanceof RE2JSException) return error.message.replace(/^error parsing regexp: /, '');
    throw error;
  }
}

/** Finds the first of several patterns that fits. */
export interface PatternList {
  /** Its place in the list and its named groups, of those that are `wanted`; `null` if none fits. */
  first(
    text: string,
    wanted?: (index: number) => boolean,
  ): { readonly index: number; readonly groups: Groups } | null;
  /** False only if the same patterns of the list fit all texts of that shape. */
  digitsMatter(shape: string): boolean;
}

/** More than these are tried one by one: one automaton of them all takes longer for a text than all of them. Measured. */
const mostInOne = 500;

/** So many texts are tried one by one before an automaton is made: a short log is read before it would be ready. Measured. */
const firstTexts = 200;

/** Several patterns to be tried one after the other, those first that may fit at all. */
export function patternList(patterns: readonly Pattern[], ignoreCase = true): PatternList {
  const candidates = patterns.length > mostInOne ? () => patterns.keys() : byAutomaton(patterns, ignoreCase);
  return {
    first(text, wanted = () => true) {
      for (const index of candidates(text)) {
        const groups = wanted(index) ? (patterns[index]?.match(text) ?? null) : null;
        if (groups !== null) return { index, groups };
      }
      return null;
    },
    digitsMatter: digitTest(patterns.map(({ source }) => source)),
  };
}

/**
 * After some texts all as one automaton that passes once over a text and names those that may fit; only they are run. Most of a
 * long log fits none, and one pattern after the other costs thirty times as much.
 */
function byAutomaton(patterns: readonly Pattern[], ignoreCase: boolean): (text: string) => Iterable<number> {
  let asked = 0;
  let set: RE2Set | undefined;
  return (text) => {
    asked += 1;
    if (asked <= firstTexts) return patterns.keys();
    set ??= automatonOf(patterns, ignoreCase);
    return [...set.match(text)].sort((a, b) => a - b);
  };
}

function automatonOf(patterns: readonly Pattern[], ignoreCase: boolean): RE2Set {
  const set = new RE2Set(RE2Set.UNANCHORED, ignoreCase ? RE2JS.CASE_INSENSITIVE : 0);
  for (const { source } of patterns) set.add(loosened(source));
  set.compile();
  return set;
}

/** Fits all that the pattern fits, and more: word boundaries, which need a slower engine, are left out. */
function loosened(source: string): string {
  // Between \Q and \E a \b is text.
  if (source.includes('\\Q')) return '';
  return source.replace(/\\[\s\S]/g, (token) => (token === '\\b' || token === '\\B' ? '(?:)' : token));
}

/** True if a base name fits a pattern of `*` and `?`, in upper or lower case. Linear: no backtracking into earlier stars. */
export function fitsGlob(glob: string, name: string): boolean {
  const pattern = compilePattern(
    `^${[...glob].map((c) => (c === '*' ? '.*' : c === '?' ? '.' : c.replace(/[.+^${}()|[\]\\]/g, '\\$&'))).join('')}$`,
    true,
  );
  return typeof pattern !== 'string' && pattern.match(name) !== null;
}
