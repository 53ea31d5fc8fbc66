import type { TimeReader } from './time-reader.ts';

/** Reads the stamps of rows that are still bytes, where they are written like the one before. */
export interface ByteStamps {
  /** Learns how the stamp that the time reader read last is written; `false` if not as such stamps are. */
  learn(bytes: Uint8Array, from: number, to: number): boolean;
  /** How many bytes a stamp has; 0 before the first that could be learnt. */
  length(): number;
  /** True for a stamp of the day that was learnt, whose clock is then ready to be taken. */
  fits(bytes: Uint8Array, from: number): boolean;
  /** Gives the instant of the stamp that fitted, in its turn. */
  take(): number;
}

const [zero, nine, colon, point, comma, zed] = [48, 57, 58, 46, 44, 90];
const dayLength = 11;
const longest = 24;

/**
 * Stamps of a date in ten characters, any one character, and `HH:MM:SS`, with or without milliseconds and `Z`: the date is
 * read once by the time reader, the clock by hand. All others, and those of another day, are for the time reader.
 */
export function byteStamps(times: TimeReader): ByteStamps {
  const known = new Uint8Array(longest);
  let length = 0;
  let isInstant = false;
  let hasDecimals = false;
  // An object, not variables: numbers that change with every row are kept in their places there.
  const seen = { dayClock: 0, clock: 0 };
  return {
    learn(bytes, from, to) {
      const stamp = times.lastStamp();
      const ofDay = clockOfDay(bytes, from, to - from);
      length = 0;
      if (stamp === undefined || ofDay < 0 || times.hasPattern() || !isDate(bytes, from)) return false;
      length = to - from;
      for (let index = 0; index < length; index += 1) known[index] = bytes[from + index] ?? 0;
      seen.clock = stamp.clock;
      seen.dayClock = stamp.clock - ofDay;
      ({ isInstant, hasDecimals } = stamp);
      return true;
    },
    length: () => length,
    fits(bytes, from) {
      // The last characters differ most.
      let index = length - 1;
      while (index >= 0 && bytes[from + index] === known[index]) index -= 1;
      if (index < 0) return true;
      for (let day = 0; day < dayLength; day += 1) if (bytes[from + day] !== known[day]) return false;
      const ofDay = clockOfDay(bytes, from, length);
      if (ofDay < 0) return false;
      seen.clock = seen.dayClock + ofDay;
      for (let at = dayLength; at < length; at += 1) known[at] = bytes[from + at] ?? 0;
      return true;
    },
    take: () => times.take(seen.clock, isInstant, hasDecimals),
  };
}

/** Ten characters of digits with two marks among them: a date with a year of four digits. */
function isDate(bytes: Uint8Array, from: number): boolean {
  const isMarkAt = (place: number): boolean => !isDigit(bytes[from + place] ?? 0);
  const marks = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9].filter(isMarkAt).join();
  return (marks === '4,7' || marks === '2,5') && isMarkAt(10);
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
