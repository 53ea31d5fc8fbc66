import type { TimeReader } from '../clock/time-reader.ts';
import type { Chunk } from './chunk.ts';
import { addLiteral, holds, type Literal, noLiterals, replaceLiteral } from './literal.ts';

/** Reads the stamps of rows that are still bytes, where they are written like the one before. */
export interface ByteStamps {
  /** Learns how the stamp is written that the time reader read last; `false` if it is none that can be read here. */
  learn(bytes: Uint8Array, from: number, to: number): boolean;
  /** How many bytes a stamp has; 0 before the first that could be learnt. */
  length(): number;
  /** True for a stamp of the day that was learnt; then `take` gives its instant. */
  fits(chunk: Chunk, from: number): boolean;
  /** The clock of the stamp that was learnt or fitted last. */
  clock(): number;
  /** The instant of the stamp that fitted last, to be asked for in the order of the rows; so many rows have it. */
  take(rows?: number): number;
}

const [zero, nine, colon, point, comma, zed] = [48, 57, 58, 46, 44, 90];
const dayLength = 11;

/**
 * Stamps of a date in ten characters, any one character, and `HH:MM:SS`, with or without milliseconds and `Z`: the date is
 * read once by the time reader, the clock here. All others, and those of another day, are left to the time reader. Where
 * many rows in a row have one stamp (`isRepeated`) it is compared as a whole first.
 */
export function byteStamps(times: TimeReader, isRepeated: boolean): ByteStamps {
  // An object, not variables: numbers that change with every row are kept in their places there.
  const literals = noLiterals();
  const seen: Seen = { whole: none, day: none, dayClock: 0, clock: 0, isInstant: false, hasDecimals: false };
  return {
    learn(bytes, from, to) {
      const stamp = times.lastStamp();
      const ofDay = clockOfDay(bytes, from, to - from);
      seen.whole = none;
      if (stamp === undefined || ofDay < 0 || times.hasPattern() || !isDate(bytes, from)) return false;
      literals.used = 0;
      seen.whole = addLiteral(literals, bytes.slice(from, to));
      seen.day = addLiteral(literals, bytes.slice(from, from + dayLength));
      seen.clock = stamp.clock;
      seen.dayClock = stamp.clock - ofDay;
      seen.isInstant = stamp.isInstant;
      seen.hasDecimals = stamp.hasDecimals;
      return true;
    },
    length: () => seen.whole.length,
    fits(chunk, from) {
      const { whole, day } = seen;
      if (isRepeated && holds(chunk.view, from, literals.words, whole)) return true;
      if (!holds(chunk.view, from, literals.words, day)) return false;
      const ofDay = clockOfDay(chunk.bytes, from, whole.length);
      if (ofDay < 0) return false;
      seen.clock = seen.dayClock + ofDay;
      if (isRepeated) replaceLiteral(literals, whole, chunk.view, from);
      return true;
    },
    clock: () => seen.clock,
    take: (rows = 1) => times.take(seen.clock, seen.isInstant, seen.hasDecimals, rows),
  };
}

interface Seen {
  /** The last stamp, and its date with the character after it. */
  whole: Literal;
  day: Literal;
  dayClock: number;
  clock: number;
  isInstant: boolean;
  hasDecimals: boolean;
}

const none: Literal = { at: 0, length: 0 };

/** Ten characters of digits with two marks among them: a date with a year of four digits. */
function isDate(bytes: Uint8Array, from: number): boolean {
  let marks = 0;
  for (let place = 0; place < dayLength; place += 1)
    if (!isDigit(bytes[from + place] ?? 0)) marks |= 1 << place;
  // YYYY-MM-DD or DD-MM-YYYY, with any marks, and one more after it.
  return marks === ((1 << 4) | (1 << 7) | (1 << 10)) || marks === ((1 << 2) | (1 << 5) | (1 << 10));
}

/** Milliseconds since midnight that a stamp of such length prints; -1 if it is written otherwise. */
function clockOfDay(bytes: Uint8Array, from: number, length: number): number {
  if (length !== 19 && length !== 20 && length !== 23 && length !== 24) return -1;
  if (bytes[from + 13] !== colon || bytes[from + 16] !== colon) return -1;
  const hour = twoDigits(bytes, from + 11);
  const minute = twoDigits(bytes, from + 14);
  const second = twoDigits(bytes, from + 17);
  if (hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 59) return -1;
  if ((length === 20 || length === 24) && bytes[from + length - 1] !== zed) return -1;
  const whole = hour * 3_600_000 + minute * 60_000 + second * 1000;
  if (length < 23) return whole;
  const mark = bytes[from + 19];
  const tens = twoDigits(bytes, from + 20);
  const last = (bytes[from + 22] ?? 0) - zero;
  return (mark !== point && mark !== comma) || tens < 0 || last < 0 || last > 9
    ? -1
    : whole + tens * 10 + last;
}

function twoDigits(bytes: Uint8Array, at: number): number {
  const [first, second] = [bytes[at] ?? 0, bytes[at + 1] ?? 0];
  return isDigit(first) && isDigit(second) ? (first - zero) * 10 + second - zero : -1;
}

function isDigit(byte: number): boolean {
  return byte >= zero && byte <= nine;
}
