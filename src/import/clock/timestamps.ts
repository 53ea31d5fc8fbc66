import { dateUtc } from './date-utc.ts';
import { months, type Stamp, type StampFailure, type StampOptions } from './stamp.ts';

/**
 * Reads the stamp that `text` begins with: ISO 8601 and RFC 3339; year, day or month first with `-`, `/`, `.` or a space
 * between; month names; 24- and 12-hour clock; fractions after `.` or `,`; epoch seconds and milliseconds; an optional
 * offset. A failure says what is wrong. Without patterns, since it runs for every row.
 */
export function readStamp(text: string, options: StampOptions): Stamp | StampFailure {
  let at = 0;
  while (text.charCodeAt(at) === 32) at += 1;
  const start = at;
  const first = digitsFrom(text, at);
  if (first.count === 0) return readMonthName(text, at, options);
  at = first.end;
  if (first.count >= 9) return readEpoch(text, first);
  const separator = text.charCodeAt(at);
  if (separator === 58 && first.count <= 2) return readClockOnly(text, start, options);
  if (!isDateSeparator(separator)) return 'no-date';
  const second = digitsFrom(text, at + 1);
  if (second.count === 0) return readNamedMonth(text, first.value, at + 1, options);
  at = second.end;
  if (text.charCodeAt(at) !== separator) return 'no-date';
  const third = digitsFrom(text, at + 1);
  if (third.count === 0) return 'no-date';
  const date =
    first.count === 4
      ? ymd(first.value, second.value, third.value)
      : byOrder(first.value, second.value, third, options);
  return typeof date === 'string' ? date : readClock(text, third.end, date);
}

interface Digits {
  readonly value: number;
  readonly count: number;
  readonly end: number;
}

function digitsFrom(text: string, from: number): Digits {
  let value = 0;
  let end = from;
  for (let code = text.charCodeAt(end); code >= 48 && code <= 57; code = text.charCodeAt(end)) {
    value = value * 10 + (code - 48);
    end += 1;
  }
  return { value, count: end - from, end };
}

/** Whole milliseconds of a fraction of a second: its first three digits, however many there are. */
function millisecondsIn(text: string, { count, end }: Digits): number {
  const from = end - count;
  return Number(text.slice(from, Math.min(end, from + 3)).padEnd(3, '0'));
}

function isDateSeparator(code: number): boolean {
  return code === 45 || code === 47 || code === 46 || code === 32;
}

function byOrder(first: number, second: number, year: Digits, options: StampOptions): number | StampFailure {
  if (year.count !== 4 && year.count !== 2) return 'no-date';
  const full = year.count === 2 ? 2000 + year.value : year.value;
  // A number past 12 can only be a day, even if the stated order is the other: read that way it is no date.
  if (options.order === undefined && first <= 12 && second <= 12 && first !== second) return 'order';
  const order = options.order ?? (second > 12 ? 'month-first' : 'day-first');
  return order === 'day-first' ? ymd(full, second, first) : ymd(full, first, second);
}

/** Days from 1 Jan 1970 to a date of the Gregorian calendar, as milliseconds; a failure for a day that does not exist. */
function ymd(year: number, month: number, day: number): number | StampFailure {
  const date = dateUtc(year, month - 1, day);
  const inRange = month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month);
  return inRange ? date : 'out-of-range';
}

/** Source: RFC 3339, Appendix C, leap years. */
function daysInMonth(year: number, month: number): number {
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  if (month === 2) return leap ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

function readEpoch(text: string, digits: Digits): Stamp | StampFailure {
  const fraction = text.charCodeAt(digits.end) === 46 ? digitsFrom(text, digits.end + 1) : undefined;
  // More digits are no milliseconds of this age, but a stamp run together: time.format describes it.
  if (digits.count > 13) return 'no-date';
  if (digits.count >= 12) return { clock: digits.value, isInstant: true, hasDecimals: true, end: digits.end };
  if (digits.count > 10) return 'no-date';
  const part = fraction === undefined ? 0 : millisecondsIn(text, fraction);
  const end = fraction?.end ?? digits.end;
  return { clock: digits.value * 1000 + part, isInstant: true, hasDecimals: fraction !== undefined, end };
}

function monthAt(text: string, at: number): number {
  return months.indexOf(text.slice(at, at + 3).toLowerCase()) + 1;
}

function skipLetters(text: string, from: number): number {
  let at = from;
  for (let code = text.charCodeAt(at) | 32; code >= 97 && code <= 122; code = text.charCodeAt(at) | 32)
    at += 1;
  return at;
}

/** `14-Mar-2026 09:14:05` or `14 Mar 09:14:05`. */
function readNamedMonth(text: string, day: number, at: number, options: StampOptions): Stamp | StampFailure {
  const month = monthAt(text, at);
  if (month === 0) return 'no-date';
  const after = skipLetters(text, at);
  const year = isDateSeparator(text.charCodeAt(after)) ? digitsFrom(text, after + 1) : undefined;
  if (year !== undefined && (year.count === 4 || (year.count === 2 && text.charCodeAt(year.end) !== 58))) {
    const date = ymd(year.count === 4 ? year.value : 2000 + year.value, month, day);
    return typeof date === 'string' ? date : readClock(text, year.end, date);
  }
  return withoutYear(text, month, day, after, options);
}

/** `Mar 14 2026 09:14:05`, or `Mar 14 09:14:05` as RFC 3164 prints it. */
function readMonthName(text: string, at: number, options: StampOptions): Stamp | StampFailure {
  const month = monthAt(text, at);
  if (month === 0) return 'no-date';
  let next = skipLetters(text, at);
  while (text.charCodeAt(next) === 32) next += 1;
  const day = digitsFrom(text, next);
  if (day.count === 0 || day.count > 2) return 'no-date';
  const gap = text.charCodeAt(day.end) === 44 ? day.end + 1 : day.end;
  const year = digitsFrom(text, gap + 1);
  if (year.count === 4) {
    const date = ymd(year.value, month, day.value);
    return typeof date === 'string' ? date : readClock(text, year.end, date);
  }
  return withoutYear(text, month, day.value, day.end, options);
}

function withoutYear(
  text: string,
  month: number,
  day: number,
  at: number,
  options: StampOptions,
): Stamp | StampFailure {
  if (options.year === undefined) return 'year';
  const date = ymd(options.year, month, day);
  return typeof date === 'string' ? date : readClock(text, at, date);
}

function readClockOnly(text: string, start: number, { day }: StampOptions): Stamp | StampFailure {
  if (day === undefined) return 'day';
  return readClock(text, start, day);
}

/** The clock after a date that ends at `from`; a date alone is its midnight. */
function readClock(text: string, from: number, date: number): Stamp | StampFailure {
  let at = from;
  for (
    let code = text.charCodeAt(at);
    code === 32 || code === 84 || code === 116 || code === 44;
    code = text.charCodeAt(at)
  )
    at += 1;
  const hour = digitsFrom(text, at);
  if (hour.count === 0) return { clock: date, isInstant: false, hasDecimals: false, end: from };
  if (text.charCodeAt(hour.end) !== 58 || hour.count > 2) return 'no-date';
  const minute = digitsFrom(text, hour.end + 1);
  const second =
    text.charCodeAt(minute.end) === 58
      ? digitsFrom(text, minute.end + 1)
      : { value: 0, count: 2, end: minute.end };
  if (minute.count !== 2 || second.count !== 2) return 'no-date';
  const mark = text.charCodeAt(second.end);
  const hasFraction = (mark === 46 || mark === 44) && digitsFrom(text, second.end + 1).count > 0;
  const fraction = hasFraction ? digitsFrom(text, second.end + 1) : undefined;
  const parts = fraction === undefined ? 0 : millisecondsIn(text, fraction);
  const end = fraction?.end ?? second.end;
  const half = readHalfDay(text, end, hour.value);
  // A leap second (RFC 3339, 60) is read as the last millisecond-precise second before it.
  const seconds = Math.min(second.value, 59);
  if (typeof half === 'string' || half.hour > 23 || minute.value > 59 || second.value > 60)
    return 'out-of-range';
  const clock = date + half.hour * 3_600_000 + minute.value * 60_000 + seconds * 1000 + parts;
  return withOffset(text, half.end, clock, hasFraction);
}

/** True if no letter, digit or `_` stands at `at`. */
function endsWord(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  const isDigit = code >= 48 && code <= 57;
  const isLetter = (code | 32) >= 97 && (code | 32) <= 122;
  return !isDigit && !isLetter && code !== 95 && !(code > 127);
}

/** `AM` and `PM` of the 12-hour clock. */
function readHalfDay(
  text: string,
  from: number,
  hour: number,
): { hour: number; end: number } | 'out-of-range' {
  let at = from;
  while (text.charCodeAt(at) === 32) at += 1;
  const letter = text.charCodeAt(at) | 32;
  // "09:20 ambient" holds no AM.
  const isHalfDay =
    (letter === 97 || letter === 112) && (text.charCodeAt(at + 1) | 32) === 109 && endsWord(text, at + 2);
  if (!isHalfDay) return { hour, end: from };
  if (hour < 1 || hour > 12) return 'out-of-range';
  return { hour: (hour % 12) + (letter === 112 ? 12 : 0), end: at + 2 };
}

function withOffset(text: string, from: number, clock: number, hasDecimals: boolean): Stamp | StampFailure {
  const at = text.charCodeAt(from) === 32 && /[+Z-]/.test(text.charAt(from + 1)) ? from + 1 : from;
  const sign = text.charCodeAt(at);
  // "10:00:00 ZEBRA-A" names a unit, not UTC.
  const isUtc = (sign === 90 || sign === 122) && endsWord(text, at + 1);
  if (isUtc) return { clock, isInstant: true, hasDecimals, end: at + 1 };
  if (sign !== 43 && sign !== 45) return { clock, isInstant: false, hasDecimals, end: from };
  const hours = digitsFrom(text, at + 1);
  const colon = text.charCodeAt(hours.end) === 58;
  const minutes = colon ? digitsFrom(text, hours.end + 1) : undefined;
  if (!(colon && hours.count === 2 && minutes?.count === 2) && hours.count !== 4) {
    return { clock, isInstant: false, hasDecimals, end: from };
  }
  const h = colon ? hours.value : Math.floor(hours.value / 100);
  const m = minutes?.value ?? hours.value % 100;
  if (h > 23 || m > 59) return 'out-of-range';
  const offset = (h * 60 + m) * 60_000;
  return {
    clock: sign === 43 ? clock - offset : clock + offset,
    isInstant: true,
    hasDecimals,
    end: minutes?.end ?? hours.end,
  };
}
