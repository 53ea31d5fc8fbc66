import { lettersEnd, monthNamed } from './calendar-words.ts';
import { dateUtc } from './date-utc.ts';
import type { Stamp, StampFailure, StampOptions } from './stamp.ts';

/** Reads the stamp that a text begins with as one stated pattern writes it. */
export interface DatePattern {
  readonly source: string;
  readonly hasYear: boolean;
  read(text: string, options: StampOptions): Stamp | StampFailure;
}

interface Fields {
  year: number | undefined;
  month: number;
  day: number;
  dayOfYear: number | undefined;
  hour: number;
  minute: number;
  second: number;
  milliseconds: number;
  afternoon: boolean | undefined;
  offset: number | undefined;
}

/** Takes one field at a place in the text; gives where it ends, or -1 if it does not stand there. */
type Part = (text: string, at: number, fields: Fields) => number;

/**
 * Compiles a date pattern such as `dd/MM/yyyy HH:mm:ss.SSS`; a text says why it is none. Letters: y, M, d, D, H, h, a,
 * m, s, S, X, x, Z, E; text between quotes stands for itself. Source: Unicode Technical Standard 35, part 4, Date Field
 * Symbol Table.
 */
export function datePattern(source: string): DatePattern | string {
  const parts: Part[] = [];
  const letters = new Set<string>();
  for (const [token] of source.matchAll(/'(?:[^']|'')*'|([A-Za-z])\1*|[^A-Za-z']+|'/g)) {
    const letter = token.charAt(0);
    const part = /[A-Za-z]/.test(letter) ? fieldPart(letter, token.length) : literalPart(token);
    if (part === undefined) return `"${token}" is no field of a date pattern that can be read`;
    parts.push(part);
    letters.add(letter);
  }
  const hasDay = letters.has('D') || (letters.has('M') && letters.has('d'));
  if (!hasDay) return 'it has no month and day';
  if (letters.has('h') && !letters.has('a')) return 'a 12-hour clock (h) needs a (AM or PM)';
  const hasYear = letters.has('y');
  const hasDecimals = letters.has('S');
  return { source, hasYear, read: (text, options) => readParts(parts, text, options, hasDecimals) };
}

function readParts(
  parts: readonly Part[],
  text: string,
  options: StampOptions,
  hasDecimals: boolean,
): Stamp | StampFailure {
  const fields: Fields = {
    year: options.year,
    month: 1,
    day: 1,
    dayOfYear: undefined,
    hour: 0,
    minute: 0,
    second: 0,
    milliseconds: 0,
    afternoon: undefined,
    offset: undefined,
  };
  let at = 0;
  while (text.charCodeAt(at) === 32) at += 1;
  for (const part of parts) {
    at = part(text, at, fields);
    if (at < 0) return 'no-date';
  }
  const clock = clockOf(fields);
  if (typeof clock === 'string') return clock;
  const isInstant = fields.offset !== undefined;
  return { clock: clock - (fields.offset ?? 0), isInstant, hasDecimals, end: at };
}

function clockOf(fields: Fields): number | StampFailure {
  const { year, month, day, dayOfYear, minute, second, milliseconds, afternoon } = fields;
  if (year === undefined) return 'year';
  const hour = afternoon === undefined ? fields.hour : (fields.hour % 12) + (afternoon ? 12 : 0);
  const isOfTwelve = afternoon === undefined || (fields.hour >= 1 && fields.hour <= 12);
  if (!isOfTwelve || hour > 23 || minute > 59 || second > 60) return 'out-of-range';
  const date = dayOfYear === undefined ? dateUtc(year, month - 1, day) : dateUtc(year, 0, dayOfYear);
  // A day that does not exist would be carried into another month, or year.
  const exists =
    dayOfYear === undefined
      ? date >= dateUtc(year, month - 1, 1) && date < dateUtc(year, month, 1) && month >= 1 && month <= 12
      : dayOfYear >= 1 && date < dateUtc(year + 1, 0, 1);
  if (!exists) return 'out-of-range';
  return date + hour * 3_600_000 + minute * 60_000 + Math.min(second, 59) * 1000 + milliseconds;
}

function literalPart(token: string): Part | undefined {
  if (token === "'") return undefined;
  const text = token.startsWith("'") ? token.slice(1, -1).replace(/''/g, "'") || "'" : token;
  return (from, at) => (from.startsWith(text, at) ? at + text.length : -1);
}

/** Digits: exactly two for a doubled letter, else as many as stand there up to `most`. */
function number(count: number, most: number, put: (fields: Fields, value: number) => void): Part {
  const [least, limit] = count === 1 ? [1, most] : [count, count];
  return (text, at, fields) => {
    let end = at;
    while (end - at < limit && text.charCodeAt(end) >= 48 && text.charCodeAt(end) <= 57) end += 1;
    if (end - at < least) return -1;
    put(fields, Number(text.slice(at, end)));
    return end;
  };
}

function fieldPart(letter: string, count: number): Part | undefined {
  switch (letter) {
    case 'y':
      return number(count, 4, (f, v) => {
        f.year = count === 2 ? 2000 + v : v;
      });
    case 'M':
      return count > 2
        ? monthName
        : number(count, 2, (f, v) => {
            f.month = v;
          });
    case 'd':
      return number(count, 2, (f, v) => {
        f.day = v;
      });
    case 'D':
      return number(count, 3, (f, v) => {
        f.dayOfYear = v;
      });
    case 'H':
    case 'h':
      return number(count, 2, (f, v) => {
        f.hour = v;
      });
    case 'm':
      return number(count, 2, (f, v) => {
        f.minute = v;
      });
    case 's':
      return number(count, 2, (f, v) => {
        f.second = v;
      });
    case 'S':
      // A clock that prints more than nanoseconds is none.
      if (count > 9) return undefined;
      return number(count, 1, (f, v) => {
        f.milliseconds = Math.floor((v / 10 ** count) * 1000 + 1e-6);
      });
    case 'a':
      return halfDay;
    case 'E':
      return word;
    case 'X':
    case 'x':
    case 'Z':
      return offset;
    default:
      return undefined;
  }
}

const word: Part = (text, at) => {
  let end = at;
  while (/\p{L}/u.test(text.charAt(end))) end += 1;
  return end === at ? -1 : end;
};

const monthName: Part = (text, at, fields) => {
  const end = lettersEnd(text, at);
  const month = monthNamed(text.slice(at, end));
  if (month === 0) return -1;
  fields.month = month;
  // The pattern may have the full stop of an abbreviation itself, or leave it to the name.
  return end;
};

const halfDay: Part = (text, at, fields) => {
  const found = /^([ap])(?:\.\s?)?m\.?/i.exec(text.slice(at, at + 5));
  if (found === null) return -1;
  fields.afternoon = found[1]?.toLowerCase() === 'p';
  return at + found[0].length;
};

const offset: Part = (text, at, fields) => {
  const found = /^(?:Z|([+-])(\d{2}):?(\d{2})?)/.exec(text.slice(at, at + 6));
  if (found === null) return -1;
  const [whole, sign, hours = '0', minutes = '0'] = found;
  fields.offset = (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes)) * 60_000;
  return at + whole.length;
};
