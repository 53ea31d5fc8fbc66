import { isBlank, isWeekday, lettersEnd, pastBlanks } from './calendar-words.ts';
import { ymd } from './date-utc.ts';
import { type Digits, digitsFrom, isDateSeparator, millisecondsIn } from './digits.ts';
import { readMonthFirst, readNamedMonth } from './named-dates.ts';
import type { Stamp, StampFailure, StampOptions } from './stamp.ts';
import { readClock } from './stamp-clock.ts';

/**
 * Reads the stamp that `text` begins with: ISO 8601 and RFC 3339; year, day or month first with `-`, `/`, `.` or a space
 * between; names of months and days in six languages; 24- and 12-hour clock, before the date too; fractions after `.` or `,`;
 * epoch seconds and milliseconds; an optional offset or zone. A failure says what is wrong. Without patterns where a row has
 * none but digits, since it runs for every row.
 */
export function readStamp(text: string, options: StampOptions): Stamp | StampFailure {
  const start = pastBlanks(text, 0);
  const first = digitsFrom(text, start);
  if (first.count === 0) return readWords(text, start, options);
  if (first.count >= 9) return readEpoch(text, first);
  const mark = text.charCodeAt(first.end);
  const isClock = mark === 58 || ((mark | 32) === 104 && digitsFrom(text, first.end + 1).count === 2);
  if (isClock && first.count <= 2) return readClockFirst(text, start, options);
  if (first.count === 8 && (mark === 84 || mark === 32)) return readBasic(text, first, options);
  return readNumbers(text, first, options);
}

/** A date that begins with a number, and its clock. */
function readNumbers(text: string, first: Digits, options: StampOptions): Stamp | StampFailure {
  const mark = text.charCodeAt(first.end);
  if (!isDateSeparator(mark)) return readNamedMonth(text, first, options);
  // "14. 3. 2026"
  const second = digitsFrom(text, mark === 46 ? pastBlanks(text, first.end + 1) : first.end + 1);
  if (second.count === 0) return readNamedMonth(text, first, options);
  if (text.charCodeAt(second.end) !== mark || second.count > 2) return 'no-date';
  const third = digitsFrom(text, mark === 46 ? pastBlanks(text, second.end + 1) : second.end + 1);
  if (third.count === 0) return 'no-date';
  const date =
    first.count === 4
      ? ymd(first.value, second.value, third.value)
      : byOrder(first.value, second.value, third, options);
  return typeof date === 'string' ? date : readClock(text, third.end, date, options);
}

/** `20260314T091405`: ISO 8601 in its basic format. */
function readBasic(text: string, { value, end }: Digits, options: StampOptions): Stamp | StampFailure {
  const clock = digitsFrom(text, end + 1);
  const date = ymd(Math.floor(value / 10_000), Math.floor(value / 100) % 100, value % 100);
  if (typeof date === 'string') return 'no-date';
  if (clock.count !== 6 && clock.count !== 4)
    return clock.count > 0 && clock.count <= 2 ? readClock(text, end, date, options) : 'no-date';
  const long = clock.count === 6 ? clock.value : clock.value * 100;
  const digits = String(long).padStart(6, '0');
  const spelt = `${digits.slice(0, 2)}:${digits.slice(2, 4)}:${digits.slice(4)}`;
  // The clock is read with its colons; what follows it stands so many characters earlier.
  const stamp = readClock(`${spelt}${text.slice(clock.end, clock.end + 40)}`, 0, date, options);
  return typeof stamp === 'string' ? stamp : { ...stamp, end: stamp.end - spelt.length + clock.end };
}

function byOrder(first: number, second: number, year: Digits, options: StampOptions): number | StampFailure {
  if (year.count !== 4 && year.count !== 2) return 'no-date';
  const full = year.count === 2 ? 2000 + year.value : year.value;
  // A number past 12 can only be a day, even if the stated order is the other: read that way it is no date.
  if (options.order === undefined && first <= 12 && second <= 12 && first !== second) return 'order';
  const order = options.order ?? (second > 12 ? 'month-first' : 'day-first');
  return order === 'day-first' ? ymd(full, second, first) : ymd(full, first, second);
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

/** A stamp that begins with the name of a day or of a month. */
function readWords(text: string, at: number, options: StampOptions): Stamp | StampFailure {
  const end = dayNameEnd(text, at);
  if (end === at || end - at > 14) return 'no-date';
  const word = text.slice(at, end);
  if (isWeekday(word)) {
    let next = text.charCodeAt(end) === 46 ? end + 1 : end;
    while (isBlank(text.charCodeAt(next)) || text.charCodeAt(next) === 44) next += 1;
    const read = next === end ? 'no-date' : readBehindDay(text, next, options);
    // "mar 14 09:14:05" is of March.
    if (read !== 'no-date') return read;
  }
  return readMonthFirst(text, at, options, false);
}

/** The letters of a name; `segunda-feira` is one. */
function dayNameEnd(text: string, at: number): number {
  const end = lettersEnd(text, at);
  return text.startsWith('-feira', end) ? end + 6 : end;
}

/** A whole date behind the name of its day. */
function readBehindDay(text: string, at: number, options: StampOptions): Stamp | StampFailure {
  const first = digitsFrom(text, at);
  if (first.count === 0) return readMonthFirst(text, at, options, true);
  return first.count <= 4 ? readNumbers(text, first, options) : 'no-date';
}

/** A clock, and behind it the date; or of the day that is known from before. */
function readClockFirst(text: string, start: number, options: StampOptions): Stamp | StampFailure {
  const clock = readClock(text, start, 0, options);
  if (typeof clock === 'string') return clock;
  let next = clock.end;
  while (isBlank(text.charCodeAt(next)) || text.charCodeAt(next) === 44) next += 1;
  const first = next === clock.end ? undefined : digitsFrom(text, next);
  const dated =
    first === undefined || first.count === 0 || first.count > 4 ? 'no-date' : dateAlone(text, first, options);
  if (typeof dated !== 'string') return { ...clock, clock: clock.clock + dated.clock, end: dated.end };
  if (dated === 'order') return dated;
  return options.day === undefined ? 'day' : { ...clock, clock: clock.clock + options.day };
}

/** A year of four digits is among it: `6.4.10` is a version. */
const wholeDate =
  /^(?:\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[-/.]\d{1,2}[-/.]\d{4}|\d{1,2}[- ]?\p{L}+\.?[- ]\d{4})(?![\w:.])/u;

/** A date with nothing read behind it. */
function dateAlone(text: string, first: Digits, options: StampOptions): Stamp | StampFailure {
  const found = wholeDate.exec(text.slice(first.end - first.count, first.end + 24))?.[0];
  if (found === undefined) return 'no-date';
  const end = first.end - first.count + found.length;
  return readNumbers(text.slice(0, end), first, { ...options, year: undefined });
}
