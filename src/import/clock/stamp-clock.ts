import { isBlank, isJoiner, isWeekday, lettersEnd, pastBlanks } from './calendar-words.ts';
import { type Digits, digitsFrom, endsWord, millisecondsIn } from './digits.ts';
import type { Stamp, StampFailure, StampOptions } from './stamp.ts';
import { withZone } from './zoned-clock.ts';

const [point, comma, colon] = [46, 44, 58];

/**
 * The clock behind a date that ends at `from`; a date alone is its midnight. `09:14:05.123`, `9:14`, `09.14.05`, `9h14`,
 * `9 h 14 min 05 s`; AM and PM as any of the six languages spells them; then an offset or a zone.
 */
export function readClock(
  text: string,
  from: number,
  date: number,
  options: StampOptions,
): Stamp | StampFailure {
  const at = clockStart(text, from);
  const hour = digitsFrom(text, at);
  if (hour.count === 0) return { clock: date, isInstant: false, hasDecimals: false, end: from };
  if (hour.count > 2) return 'no-date';
  const mark = text.charCodeAt(hour.end);
  if (mark === colon || mark === point) return readMarked(text, hour, mark, date, options);
  return readHours(text, hour, date, options);
}

/** Past what stands between a date and its clock: blanks, `T`, `,`, `:`, `_`, ` - `, `at`, a day of the week. */
function clockStart(text: string, from: number): number {
  let at = from;
  for (let code = text.charCodeAt(at); ; code = text.charCodeAt(at)) {
    if (isBlank(code) || code === comma) at += 1;
    else if ((code === 84 || code === 116) && isDigit(text.charCodeAt(at + 1))) at += 1;
    else if ((code === colon || code === 95) && at === from) at += 1;
    else if (code === 45 && isBlank(text.charCodeAt(at + 1)) && at > from) at += 1;
    else if (isDigit(code) || Number.isNaN(code)) return at;
    else {
      const end = joinerEnd(text, code === 40 ? at + 1 : at);
      if (end < 0) return at;
      at = end;
    }
  }
}

/** Where a joining word or the name of a day ends, with what belongs to it: `um`, `Sat`, `lun.`, `(Mon)`; -1 for others. */
function joinerEnd(text: string, at: number): number {
  const end = lettersEnd(text, at);
  const word = end > at && end - at <= 10 ? text.slice(at, end) : '';
  if (word === '' || !(isJoiner(word) || isWeekday(word))) return -1;
  const mark = text.charCodeAt(end);
  return mark === point || mark === 41 ? end + 1 : end;
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

/** `HH:MM`, `HH:MM:SS` with a fraction, or the same with full stops. */
function readMarked(
  text: string,
  hour: Digits,
  mark: number,
  date: number,
  options: StampOptions,
): Stamp | StampFailure {
  const minute = digitsFrom(text, hour.end + 1);
  if (minute.count !== 2) return 'no-date';
  // "12.50bar" is none.
  if (mark === point && !endsWord(text, minute.end) && halfDayAt(text, minute.end) === noHalf)
    return 'no-date';
  const isLong = text.charCodeAt(minute.end) === mark && isDigit(text.charCodeAt(minute.end + 1));
  if (!isLong)
    return finish(text, date, { hour: hour.value, minute: minute.value, end: minute.end }, options);
  const second = digitsFrom(text, minute.end + 1);
  if (second.count !== 2) return 'no-date';
  const behind = text.charCodeAt(second.end);
  const part = behind === point || behind === comma ? digitsFrom(text, second.end + 1) : undefined;
  const fraction = part === undefined || part.count === 0 ? undefined : part;
  return finish(
    text,
    date,
    {
      hour: hour.value,
      minute: minute.value,
      second: second.value,
      fraction,
      end: fraction?.end ?? second.end,
    },
    options,
  );
}

/** `9h14`, `09h14m05s`, `9 h 14 min 05 s`. */
const hours = /\s?[hH]\s?(\d{2})(?:(?:\s?(?:m|min|mn)\s?|[:'′])(\d{2})\s?(?:s\b|["″])?|\s?(?:min|mn|m)\b)?/y;

function readHours(text: string, hour: Digits, date: number, options: StampOptions): Stamp | StampFailure {
  hours.lastIndex = hour.end;
  const found = hours.exec(text);
  if (found === null || !endsWord(text, hours.lastIndex)) return 'no-date';
  const [whole, minute = '0', second = '0'] = found;
  return finish(
    text,
    date,
    { hour: hour.value, minute: Number(minute), second: Number(second), end: hour.end + whole.length },
    options,
  );
}

interface Clock {
  readonly hour: number;
  readonly minute: number;
  readonly second?: number;
  readonly fraction?: Digits | undefined;
  readonly end: number;
}

function finish(
  text: string,
  date: number,
  { hour, minute, second = 0, fraction, end }: Clock,
  options: StampOptions,
): Stamp | StampFailure {
  const half = end === text.length ? noHalf : halfDayAt(text, end);
  const isTwelve = half.half !== null && !(isWordAm(text, half.end, half.half) && hour > 12);
  if (isTwelve && (hour < 1 || hour > 12)) return 'out-of-range';
  const full = isTwelve ? (hour % 12) + (half.half === 'p' ? 12 : 0) : hour;
  // A leap second (RFC 3339, 60) is read as the last millisecond-precise second before it.
  if (full > 23 || minute > 59 || second > 60) return 'out-of-range';
  const parts = fraction === undefined ? 0 : millisecondsIn(text, fraction);
  const clock = date + full * 3_600_000 + minute * 60_000 + Math.min(second, 59) * 1000 + parts;
  return withZone(text, isTwelve ? half.end : end, clock, fraction !== undefined, options);
}

/** "13:20 am Schrank" is German, and no forenoon. */
function isWordAm(text: string, end: number, half: 'a' | 'p' | null): boolean {
  return half === 'a' && text.charCodeAt(end - 1) === 109;
}

interface HalfDay {
  readonly half: 'a' | 'p' | null;
  readonly end: number;
}

const noHalf: HalfDay = { half: null, end: 0 };

/** `AM`, `pm`, `a.m.`, `P.M.`, `p. m.`: "09:20 ambient" holds none. */
function halfDayAt(text: string, from: number): HalfDay {
  const at = pastBlanks(text, from);
  const letter = text.charCodeAt(at) | 32;
  if (letter !== 97 && letter !== 112) return noHalf;
  const isDotted = text.charCodeAt(at + 1) === point;
  const second = isDotted ? pastBlanks(text, at + 2) : at + 1;
  if ((text.charCodeAt(second) | 32) !== 109 || !endsWord(text, second + 1)) return noHalf;
  const end = isDotted && text.charCodeAt(second + 1) === point ? second + 2 : second + 1;
  return { half: letter === 97 ? 'a' : 'p', end };
}
