/** Words up to this long are compared: no key and no value is longer, and a log may hold any text. */
const longest = 60;

/**
 * The word that was most likely meant: the one that takes the fewest letters added, left out, changed or swapped with the next
 * (at most one in three, and one in a short word); `null` where none is near. Of two as near the first.
 */
function nearestWord(said: string, words: readonly string[]): string | null {
  const word = said.trim().toLowerCase();
  if (word === '' || word.length > longest) return null;
  let best: string | null = null;
  let least = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const other of words) {
    if (Math.abs(other.length - word.length) >= least) continue;
    const distance = editDistance(word, other.toLowerCase());
    if (distance >= least) continue;
    least = distance;
    best = other;
  }
  return best;
}

/** Source: optimal string alignment, Damerau, Communications of the ACM 7 (1964), from memory. */
function editDistance(a: string, b: string): number {
  let before: readonly number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let row = 1; row <= a.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= b.length; column += 1) {
      const isSame = a[row - 1] === b[column - 1];
      const isSwapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      current.push(
        Math.min(
          (above[column] ?? 0) + 1,
          (current[column - 1] ?? 0) + 1,
          (above[column - 1] ?? 0) + (isSame ? 0 : 1),
          isSwapped ? (before[column - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY,
        ),
      );
    }
    before = above;
    above = current;
  }
  return above[b.length] ?? 0;
}

/** What to do about a wrong word: the nearest right one, if one is near, and which there are. */
export function chooseOneOf(said: string, words: readonly string[]): string {
  const near = nearestWord(said, words);
  const meant = near === null ? '' : `Did you mean ${near}? `;
  return `${meant}Choose one of ${words.join(', ')}.`;
}
