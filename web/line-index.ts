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
    let count = index.at(-1) ?? 0;
    const end = Math.min(bytes.length, at + pieceBytes);
    for (let byte = at; byte < end; byte += 1) if (bytes[byte] === newline) count += 1;
    index.push(count);
  }
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
