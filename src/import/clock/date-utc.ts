/** Four centuries of the Gregorian calendar, which come round day by day. */
const centuriesMs = 146_097 * 86_400_000;

/**
 * The first instant of a date, in milliseconds UTC; months count from 0, and a day or month past its end goes on into the
 * next. Years below 100 are what they say, and not of the twentieth century, as `Date.UTC` has it.
 */
export function dateUtc(year: number, month: number, day: number): number {
  return Date.UTC(year + 400, month, day) - centuriesMs;
}
