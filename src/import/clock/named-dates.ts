import { isBlank, lettersEnd, monthNamed, pastBlanks } from './calendar-words.ts';
import { ymd } from './date-utc.ts';
import { type Digits, digitsFrom, endsWord, isDateSeparator } from './digits.ts';
import type { Stamp, StampFailure, StampOptions } from './stamp.ts';
import { readClock } from './stamp-clock.ts';

/** The day of the month before a name: `14`, `14.`, `14th`, `1er`, `1º`; where the name begins. */
function nameStart(text: string, { end }: Digits): number {
  const after = lettersEnd(text, end);
  const letters = text.slice(end, Math.min(after, end + 3)).toLowerCase();
  let at = ordinals.has(letters) ? after : end;
  for (
    let code = text.charCodeAt(at);
    isDateSeparator(code) || isBlank(code) || code === 0xba || code === 0xb0;
  ) {
    at += 1;
    code = text.charCodeAt(at);
  }
  return pastOf(text, at);
}

const ordinals: ReadonlySet<string> = new Set(['st', 'nd', 'rd', 'th', 'er']);

/** Past `de` or `of`, as in `3 de março de 2026`. */
function pastOf(text: string, at: number): number {
  const end = lettersEnd(text, at);
  const word = end - at === 2 ? text.slice(at, end).toLowerCase() : '';
  return (word === 'de' || word === 'of') && isBlank(text.charCodeAt(end)) ? pastBlanks(text, end) : at;
}

/** `14-Mar-2026 09:14:05`, `14. März 2026 09:14`, `3 de março de 2026 9h14` or `14 Mar 09:14:05`. */
export function readNamedMonth(text: string, day: Digits, options: StampOptions): Stamp | StampFailure {
  if (day.count === 4) return readYearFirst(text, day, options);
  if (day.count > 2) return 'no-date';
  const at = nameStart(text, day);
  const end = lettersEnd(text, at);
  const month = end > at ? monthNamed(text.slice(at, end)) : 0;
  if (month === 0) return 'no-date';
  const after = text.charCodeAt(end) === 46 ? end + 1 : end;
  const next = text.charCodeAt(after);
  const isParted = isDateSeparator(next) || isBlank(next) || next === 44;
  const year = digitsFrom(text, isParted ? pastOf(text, pastBlanks(text, after + 1)) : after);
  const isClock = text.charCodeAt(year.end) === 58 || text.charCodeAt(year.end) === 104;
  if (year.count === 4 || (year.count === 2 && !isClock)) {
    const date = ymd(year.count === 4 ? year.value : 2000 + year.value, month, day.value);
    return typeof date === 'string' ? date : readClock(text, year.end, date, options);
  }
  return withoutYear(text, month, day.value, after, options);
}

/** `2026-Mar-14 09:14:05`. */
function readYearFirst(text: string, year: Digits, options: StampOptions): Stamp | StampFailure {
  const mark = text.charCodeAt(year.end);
  const end = lettersEnd(text, year.end + 1);
  const month = isDateSeparator(mark) && end > year.end + 1 ? monthNamed(text.slice(year.end + 1, end)) : 0;
  const day = digitsFrom(text, end + 1);
  if (month === 0 || text.charCodeAt(end) !== mark || day.count === 0) return 'no-date';
  const date = ymd(year.value, month, day.value);
  return typeof date === 'string' ? date : readClock(text, day.end, date, options);
}

/**
 * `Mar 14 2026 09:14:05`, `March 14th, 2026`, or `Mar 14 09:14:05` as RFC 3164 prints it; behind the name of a day also
 * `Mar 14 09:14:05 2026`, as the C library's `ctime` prints it (ISO/IEC 9899, 7.27.3.1).
 */
export function readMonthFirst(
  text: string,
  at: number,
  options: StampOptions,
  isBehindDay: boolean,
): Stamp | StampFailure {
  const end = lettersEnd(text, at);
  const month = end > at ? monthNamed(text.slice(at, end)) : 0;
  if (month === 0) return 'no-date';
  const mark = text.charCodeAt(end);
  const day = digitsFrom(text, pastBlanks(text, mark === 46 || mark === 45 || mark === 47 ? end + 1 : end));
  if (day.count === 0 || day.count > 2) return 'no-date';
  const ordinal = lettersEnd(text, day.end);
  const dayEnd = ordinals.has(text.slice(day.end, ordinal).toLowerCase()) ? ordinal : day.end;
  const gap = text.charCodeAt(dayEnd) === 44 ? dayEnd + 1 : dayEnd;
  const year = digitsFrom(text, gap + 1);
  if (year.count === 4) {
    const date = ymd(year.value, month, day.value);
    return typeof date === 'string' ? date : readClock(text, year.end, date, options);
  }
  const late = isBehindDay ? yearBehindClock(text, month, day.value, dayEnd, options) : null;
  return late ?? withoutYear(text, month, day.value, dayEnd, options);
}

/** The stamp of a date whose year stands behind its clock; `null` where none does. */
function yearBehindClock(
  text: string,
  month: number,
  day: number,
  at: number,
  options: StampOptions,
): Stamp | StampFailure | null {
  const clock = readClock(text, at, 0, options);
  if (typeof clock === 'string') return null;
  const year = digitsFrom(text, pastBlanks(text, clock.end));
  if (clock.end === at || year.count !== 4 || !endsWord(text, year.end)) return null;
  const date = ymd(year.value, month, day);
  return typeof date === 'string' ? date : { ...clock, clock: clock.clock + date, end: year.end };
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
  if (typeof date === 'string') return date;
  const stamp = readClock(text, at, date, options);
  // "May 5 of 7 pumps" is no date.
  const isAlone = typeof stamp !== 'string' && stamp.end === at;
  return isAlone && pastBlanks(text, at) < text.length ? 'no-date' : stamp;
}
