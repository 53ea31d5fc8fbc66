import type { DatePattern } from './date-pattern.ts';
import type { Stamp, StampFailure } from './stamp.ts';

/** What an epoch count may count. */
export const epochUnits = ['s', 'ms', 'us', 'ns'] as const;
export type EpochUnit = (typeof epochUnits)[number];

/** By how many digits a count of such a unit is finer than milliseconds; seconds are coarser. */
const finerBy: Readonly<Record<EpochUnit, number>> = { s: -3, ms: 0, us: 3, ns: 6 };
const longestCount = 30;
/** The end of the year 9999 in milliseconds UTC: a later stamp was counted in another unit. */
const lastInstant = 253_402_300_799_999;

/** Stamps that count seconds, decimals and all, from an instant in milliseconds UTC on: `12.5`, `[   12.345678]`. */
export function secondsSince(start: number): DatePattern {
  return counting('seconds since an instant', start, 's');
}

/** Stamps that count from 1970 on, no matter what their number of digits. */
export function epochCount(unit: EpochUnit): DatePattern {
  return counting(`epoch ${unit}`, 0, unit);
}

function counting(source: string, start: number, unit: EpochUnit): DatePattern {
  return { source, hasYear: true, read: (text) => readCount(text, start, unit) };
}

/** The count that a text begins with, after blanks and an opening bracket, which its partner must close. */
function readCount(text: string, start: number, unit: EpochUnit): Stamp | StampFailure {
  const open = pastBlanks(text, 0);
  const close = closing.get(text.charCodeAt(open));
  const from = close === undefined ? open : pastBlanks(text, open + 1);
  const whole = pastDigits(text, from);
  if (whole === from || whole - from > longestCount) return 'no-date';
  const mark = text.charCodeAt(whole);
  const hasFraction = (mark === point || mark === comma) && isDigit(text.charCodeAt(whole + 1));
  const end = hasFraction ? pastDigits(text, whole + 1) : whole;
  const after = close === undefined ? end : pastBlanks(text, end);
  if (close === undefined ? !endsCount(text, end) : text.charCodeAt(after) !== close) return 'no-date';
  const clock = start + millisecondsOf(text, from, whole, end, finerBy[unit]);
  if (clock > lastInstant) return 'out-of-range';
  const hasDecimals = unit !== 's' || hasFraction;
  return { clock, isInstant: true, hasDecimals, end: close === undefined ? end : after + 1 };
}

/** Whole milliseconds; what is finer is cut off as text, since no number holds nineteen digits. */
function millisecondsOf(text: string, from: number, whole: number, end: number, finer: number): number {
  if (finer >= 0) return Number(text.slice(from, Math.max(from, whole - finer)));
  const decimals = text.slice(whole + 1, Math.min(end, whole + 4)).padEnd(3, '0');
  return Number(text.slice(from, whole)) * 1000 + Number(decimals);
}

const [point, comma] = [46, 44];
/** Which bracket closes which. */
const closing: ReadonlyMap<number, number> = new Map([
  [91, 93],
  [40, 41],
  [60, 62],
]);

/** No digit of another number, and no date, clock or name goes on there: "2026-03-14", "10:00" and "12a" are no counts. */
function endsCount(text: string, at: number): boolean {
  return !/^(?:[\p{L}\p{N}_/-]|[.:]\d)/u.test(text.slice(at, at + 2));
}

function pastBlanks(text: string, from: number): number {
  let at = from;
  while (text.charCodeAt(at) === 32 || text.charCodeAt(at) === 9) at += 1;
  return at;
}

function pastDigits(text: string, from: number): number {
  let at = from;
  while (isDigit(text.charCodeAt(at))) at += 1;
  return at;
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}
