const [zero, nine, minus, point, percent, space] = [48, 57, 45, 46, 37, 32];

/** Where the numbers of the gauges of a row go, and the byte of a decimal comma; -1 where a comma separates cells. */
interface GaugeNumbers {
  readonly comma: number;
  readonly numbers: Float64Array;
}

/** Reads a number as a gauge prints it into its place; gives where it ends, or `from` if there is none. */
export function readNumber(
  { comma, numbers }: GaugeNumbers,
  bytes: Uint8Array,
  from: number,
  into: number,
): number {
  let at = bytes[from] === minus ? from + 1 : from;
  const first = at;
  let digits = 0;
  let decimals = -1;
  for (let byte = bytes[at] ?? 0; ; byte = bytes[at] ?? 0) {
    if (byte >= zero && byte <= nine) {
      digits = digits * 10 + byte - zero;
      if (decimals >= 0) decimals += 1;
    } else if ((byte === point || byte === comma) && decimals < 0 && at > first) decimals = 0;
    else break;
    at += 1;
  }
  // Up to fifteen digits and a power of ten are exact: their quotient is the number nearest to the text.
  if (at === first || decimals === 0 || at - first > 15) return from;
  const size = decimals > 0 ? digits / 10 ** decimals : digits;
  numbers[into] = first === from ? size : -size;
  return at;
}

/** Where the number of a cell from `from` to `to` ends: a percent sign after it, and spaces before that, are no part of it. */
export function endOfNumber(bytes: Uint8Array, from: number, to: number): number {
  if (to === from || bytes[to - 1] !== percent) return to;
  let end = to - 1;
  while (end > from && bytes[end - 1] === space) end -= 1;
  return end;
}
