/** Ranges that must not reach a reader: C0 but the line end, DEL and C1, and the bidirectional controls (Unicode UAX 9, section 2). */
const hiddenRanges = [
  [0x00, 0x09],
  [0x0b, 0x1f],
  [0x7f, 0x9f],
  [0x61c, 0x61c],
  [0x00ad, 0x00ad],
  [0x180e, 0x180e],
  [0x200b, 0x200f],
  [0x2060, 0x2064],
  [0xfeff, 0xfeff],
  [0x2028, 0x202e],
  [0x2066, 0x2069],
] as const;

/** The codes of the characters in a text that nobody would see. */
export function hiddenIn(text: string): readonly string[] {
  const codes = [...text].map((character) => character.codePointAt(0) ?? 0);
  return codes
    .filter((code) => hiddenRanges.some(([from, to]) => code >= from && code <= to))
    .map((code) => code.toString(16));
}
