const token = /\\[\s\S]|\[\^?\]?(?:\\[\s\S]|[^\\\]])*\]|\{[^}]*\}|\((?:\?[^):>]*[:>])?|[\s\S]/g;

/** Nobody writes a longer one, and to take it apart would cost more than to run it. */
const longestSource = 2000;

/** A part of a pattern between two brackets. */
interface Part {
  /** The longest run of plain letters that stands in it certainly. */
  longest: string;
  run: string;
  hasBranch: boolean;
}

/**
 * The longest run of plain ASCII letters, figures and blanks that any text must hold if the pattern is to fit it, in lower case;
 * empty where there is none certainly. What stands in classes, branches and repeats does not count.
 */
export function requiredWords(source: string): string {
  if (source.length > longestSource || /\\[pPxQC\d]/.test(source)) return '';
  const parts: Part[] = [{ longest: '', run: '', hasBranch: false }];
  let closed = '';
  for (const [found] of source.matchAll(token)) {
    const part = parts.at(-1);
    if (part === undefined) return '';
    // A group is there certainly unless what follows says that it may be there no time at all.
    if (!/^[*?{]/.test(found)) part.longest = longerOf(part.longest, closed);
    closed = '';
    if (/^[A-Za-z0-9 _-]$/.test(found)) {
      part.run += found;
      continue;
    }
    part.longest = longerOf(part.longest, /^[*?{]/.test(found) ? part.run.slice(0, -1) : part.run);
    part.run = '';
    if (found === '|') part.hasBranch = true;
    if (found.startsWith('(')) parts.push({ longest: '', run: '', hasBranch: false });
    if (found === ')') closed = wordsIn(parts.pop());
  }
  const [whole] = parts;
  if (whole === undefined || parts.length > 1) return '';
  const longest = longerOf(longerOf(whole.longest, whole.run), closed);
  return whole.hasBranch ? '' : longest.toLowerCase();
}

function wordsIn(part: Part | undefined): string {
  return part === undefined || part.hasBranch ? '' : longerOf(part.longest, part.run);
}

function longerOf(a: string, b: string): string {
  return b.length > a.length ? b : a;
}

/** A text as required words are searched in it: letters that any folding of case makes alike are alike. */
export function foldedCase(text: string): string {
  return text.toUpperCase().toLowerCase();
}
