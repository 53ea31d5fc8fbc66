/** A run of digits in a text. */
export interface Digits {
  readonly value: number;
  readonly count: number;
  readonly end: number;
}

/** The digits that stand at a place; `count` is 0 where there are none. */
export function digitsFrom(text: string, from: number): Digits {
  let value = 0;
  let end = from;
  for (let code = text.charCodeAt(end); code >= 48 && code <= 57; code = text.charCodeAt(end)) {
    value = value * 10 + (code - 48);
    end += 1;
  }
  return { value, count: end - from, end };
}

/** Whole milliseconds of a fraction of a second: its first three digits, however many there are. */
export function millisecondsIn(text: string, { count, end }: Digits): number {
  const from = end - count;
  let parts = 0;
  for (let at = from; at < from + 3; at += 1) parts = parts * 10 + (at < end ? text.charCodeAt(at) - 48 : 0);
  return parts;
}

/** True if no letter, digit or `_` stands at `at`. */
export function endsWord(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  const isDigit = code >= 48 && code <= 57;
  const isLetter = (code | 32) >= 97 && (code | 32) <= 122;
  // 160 and what is like it are blanks.
  const isOther = code > 127 && code !== 0xa0 && code !== 0x202f && code !== 0x2009;
  return !isDigit && !isLetter && code !== 95 && !isOther;
}

/** `-`, `/`, `.` or a space, between the parts of a date. */
export function isDateSeparator(code: number): boolean {
  return code === 45 || code === 47 || code === 46 || code === 32;
}
