/** Four centuries of the Gregorian calendar, which come round day by day. */
const centuriesMs = 146_097 * 86_400_000;

/**
 * The first instant of a date, in milliseconds UTC; months count from 0, and a day or month past its end goes on into the
 * next. Years below 100 are what they say, and not of the twentieth century, as `Date.UTC` has it.
 */
export function dateUtc(year: number, month: number, day: number): number {
  return Date.UTC(year + 400, month, day) - centuriesMs;
}

/** Days from 1 Jan 1970 to a date of the Gregorian calendar, as milliseconds; a failure for a day that does not exist. */
export function ymd(year: number, month: number, day: number): number | 'out-of-range' {
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
