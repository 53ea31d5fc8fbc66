import type { SourceLine } from '../../vocabulary.ts';
import { withoutLineEnd } from './row.ts';

/** Lines behind bytes that are zero: a loss of power leaves such where text was to be written. */
export interface ZeroBytes {
  lines: number;
  /** How many there were, as characters of the file's encoding. */
  characters: number;
  /** The first of the lines, without the zeros. */
  readonly first: Omit<SourceLine, 'file'>[];
}

const mostLines = 5;
const zero = '\0';
/** At the start of a line any; in its midst fewer are stray characters of a text. Chosen here. */
const gaps = /^\0+|\0{4,}/g;

/** None yet. */
export function noZeroBytes(): ZeroBytes {
  return { lines: 0, characters: 0, first: [] };
}

/**
 * A line without the zeros that stand before it: what stands before them was never ended, and is left out. Of a line that
 * ends with them, or holds nothing else, one is left where it began with them. `dropped` were taken off its begin already.
 */
export function behindZeros(text: string, line: number, dropped: number, zeros: ZeroBytes): string {
  if (!text.includes(zero)) return text;
  const gap = [...text.matchAll(gaps)].at(-1);
  const from = gap === undefined ? 0 : gap.index + gap[0].length;
  const rest = text.slice(from);
  if (from === 0 || rest.trim() === '') return text.slice(surplusZeros(text));
  zeros.lines += 1;
  zeros.characters += dropped + text.slice(0, from).split(zero).length - 1;
  if (zeros.first.length < mostLines) zeros.first.push({ line, text: withoutLineEnd(rest) });
  return rest;
}

/** The same for each line of a text that begins on `line`; `dropped` were taken off the first. */
export function linesBehindZeros(text: string, line: number, dropped: number, zeros: ZeroBytes): string {
  if (!text.includes(zero)) return text;
  const lines = text.split('\n');
  return lines.map((one, at) => behindZeros(one, line + at, at === 0 ? dropped : 0, zeros)).join('\n');
}

/** How many zeros a text begins with, but for one: they need not be kept until its line ends. */
export function surplusZeros(text: string): number {
  let count = 0;
  while (text[count] === zero) count += 1;
  return Math.max(0, count - 1);
}
