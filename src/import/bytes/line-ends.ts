const lineFeed = 10;

/**
 * Where the last whole line of some bytes ends; 0 where none does. `at` is the place of the first of them in the file: in
 * UTF-16 two bytes that stand together there are one character.
 */
export function lastLineEnd(bytes: Uint8Array, at: number, encoding: string): number {
  if (encoding !== 'utf-16le' && encoding !== 'utf-16be') return bytes.lastIndexOf(lineFeed) + 1;
  const [first, second] = encoding === 'utf-16le' ? [lineFeed, 0] : [0, lineFeed];
  const odd = at % 2;
  for (let place = bytes.length - 2; place >= 0; place -= 1)
    if (place % 2 === odd && bytes[place] === first && bytes[place + 1] === second) return place + 2;
  return 0;
}
