/** A byte order mark in UTF-8. */
export function isMark([first, second, third]: Uint8Array): boolean {
  return first === 0xef && second === 0xbb && third === 0xbf;
}

/** One after the other. */
export function join(first: Uint8Array, second: Uint8Array): Uint8Array {
  const joined = new Uint8Array(first.length + second.length);
  joined.set(first);
  joined.set(second, first.length);
  return joined;
}
