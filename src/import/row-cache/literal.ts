/** Where some bytes stand among the literals: `at` counts words. */
export interface Literal {
  readonly at: number;
  readonly length: number;
}

/**
 * Bytes to be compared with, all in one array and four at a time: most of a poll is the same bytes again, and this is the
 * loop that reads it. The last word of a literal overlaps the one before it, so that nothing is left over.
 */
export interface Literals {
  words: Int32Array;
  used: number;
}

const wordBytes = 4;
const masks = [0, 0xff, 0xffff, 0xffffff] as const;

/** None yet. */
export function noLiterals(): Literals {
  return { words: new Int32Array(1024), used: 0 };
}

/** Adds bytes to the literals. */
export function addLiteral(literals: Literals, bytes: Uint8Array): Literal {
  const at = literals.used;
  const used = at + wordsIn(bytes.length);
  if (used > literals.words.length) {
    const larger = new Int32Array(2 * used);
    larger.set(literals.words);
    literals.words = larger;
  }
  literals.used = used;
  const { length } = bytes;
  for (let index = 0; index < wordsIn(length); index += 1)
    literals.words[at + index] = wordAt(bytes, placeOf(index, length));
  return { at, length };
}

/** Puts bytes of a chunk in the place of others of the same length, four at least. */
export function replaceLiteral(
  { words }: Literals,
  { at, length }: Literal,
  view: DataView,
  from: number,
): void {
  for (let index = 0; index < wordsIn(length); index += 1)
    words[at + index] = view.getInt32(from + placeOf(index, length), true);
}

/** Where a word of so many bytes begins: the last overlaps the one before it. */
function placeOf(index: number, length: number): number {
  return Math.max(0, Math.min(index * wordBytes, length - wordBytes));
}

/** Four bytes as a number; zeros stand for those that are not there. */
function wordAt(bytes: Uint8Array, from: number): number {
  const low = (bytes[from] ?? 0) | ((bytes[from + 1] ?? 0) << 8);
  return low | ((bytes[from + 2] ?? 0) << 16) | ((bytes[from + 3] ?? 0) << 24);
}

function wordsIn(length: number): number {
  return Math.max(1, Math.ceil(length / wordBytes));
}

/** True if the chunk holds a literal at `from`. False, for the caller to look more closely, in its last four bytes. */
export function holds(view: DataView, from: number, words: Int32Array, { at, length }: Literal): boolean {
  if (length < wordBytes) {
    if (length === 0) return true;
    return (
      from + wordBytes <= view.byteLength && (view.getInt32(from, true) & (masks[length] ?? 0)) === words[at]
    );
  }
  const last = from + length - wordBytes;
  if (last + wordBytes > view.byteLength) return false;
  let index = at;
  for (let place = from; place < last; place += wordBytes, index += 1)
    if (view.getInt32(place, true) !== words[index]) return false;
  return view.getInt32(last, true) === words[index];
}
