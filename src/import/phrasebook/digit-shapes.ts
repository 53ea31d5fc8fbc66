import { foldedCase, mayHold, requiredWords } from './required-words.ts';

const parts = /\\[\s\S]|\[\^?\]?(?:\\[\s\S]|\[:\^?\w+:\]|[^\\\]])*\]|\{\d+(?:,\d*)?\}|\(\?P?<\w+>|[\s\S]/g;

/** Nobody writes a longer one. */
const longestSource = 2000;

/** The shape of a text: a 0 stands for each of its digits. Texts of one shape differ in their digits alone. */
export function digitShape(text: string): string {
  return text.replace(/[1-9]/g, '0');
}

/**
 * A test of shapes: false only if each of the patterns fits all texts of a shape in the same places, or none of them. A pattern that
 * takes any digit where it takes one cannot tell such texts apart; one that can must at least be shown not to fit.
 */
export function digitTest(sources: readonly string[]): (shape: string) => boolean {
  const required = sources.filter(tellsDigits).map((source) => requiredWords(source).map(digitShape));
  return (shape) => {
    const folded = required.length === 0 ? '' : foldedCase(shape);
    return required.some((words) => mayHold(folded, words));
  };
}

/** True unless a pattern certainly takes any digit wherever it takes one; how many there are is no matter here. */
function tellsDigits(source: string): boolean {
  return source.length > longestSource || [...source.matchAll(parts)].some(([part]) => isOfDigits(part));
}

/** Codes of characters, classes of Unicode and quoted text may hold single digits without a look of it. */
function isOfDigits(part: string): boolean {
  if (/\\[pPxQE\d]/.test(part)) return true;
  if (part.startsWith('[')) return /\d/.test(part.replace(/(?<!-)0-9/g, ''));
  return /^\d$/.test(part);
}
