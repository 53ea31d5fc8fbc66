/** A file is indexed piece by piece, each of so many bytes: four numbers for a megabyte. */
export const pieceBytes = 262_144;

/** How many line ends stand before each piece of a file, as far as it was read; begins as `[0]`. */
export type LineIndex = number[];

const newline = 10;

/**
 * Notes the line ends of the bytes that stand at `from`, where the index ends there: what is read once is counted once. In
 * UTF-16 the byte of a line end stands in other characters too: there `countEnds` counts.
 */
export function noteEnds(index: LineIndex, from: number, bytes: Uint8Array): void {
  for (let at = 0; at < bytes.length; at += pieceBytes) {
    if (from + at !== (index.length - 1) * pieceBytes) return;
    index.push((index.at(-1) ?? 0) + newlinesIn(bytes.subarray(at, at + pieceBytes)));
  }
}

/** Four at a time: a poll has a row every forty bytes, and all of them pass here. */
function newlinesIn(bytes: Uint8Array): number {
  // Words stand at every fourth place of the memory.
  const first = -bytes.byteOffset & 3;
  if (bytes.length < first) return newlinesOf(bytes);
  const words = new Int32Array(bytes.buffer, bytes.byteOffset + first, (bytes.length - first) >>> 2);
  const rest = first + words.length * 4;
  return newlinesOf(bytes.subarray(0, first)) + newlinesInWords(words) + newlinesOf(bytes.subarray(rest));
}

function newlinesOf(bytes: Uint8Array): number {
  let count = 0;
  for (const byte of bytes) if (byte === newline) count += 1;
  return count;
}

/** The sum of so many words, each 0 or 1 in each of its four bytes, carries nothing from one byte into the next. */
const mostSummed = 255;

function newlinesInWords(words: Int32Array): number {
  let count = 0;
  for (let from = 0; from < words.length; from += mostSummed) {
    const end = Math.min(words.length, from + mostSummed);
    let sum = 0;
    for (let at = from; at < end; at += 1) {
      // Zero where a newline was. Only a byte that is not zero has its highest bit set in what follows.
      const other = (words[at] ?? 0) ^ 0x0a0a0a0a;
      sum += (~(((other & 0x7f7f7f7f) + 0x7f7f7f7f) | other) >>> 7) & 0x01010101;
    }
    count += (sum & 255) + ((sum >>> 8) & 255) + ((sum >>> 16) & 255) + (sum >>> 24);
  }
  return count;
}

/** How many line ends a text holds. */
export function countEnds(text: string): number {
  let count = 0;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) count += 1;
  return count;
}

/** The last piece that begins within a line before `line`, or with the file, and the number of the line it begins in. */
export function pieceBefore(
  index: LineIndex,
  line: number,
): { readonly piece: number; readonly line: number } {
  // A piece may begin within a line or a character, so that its first line cannot be read from it.
  const piece = Math.max(
    0,
    index.findLastIndex((ends) => ends < line - 1),
  );
  return { piece, line: (index[piece] ?? 0) + 1 };
}
