import type { DateOrder } from '../clock/stamp.ts';
import { readStamp } from '../clock/timestamps.ts';

const numbered = /^\s*\d{1,2}[-/.]\d{1,2}[-/.](?:\d{4}|\d{2})\b/;

/**
 * The order of day and month that the stamps were most likely written in: the one that can be read, else the one by which
 * they span the shorter time, else the day first. `null` where their order is plain.
 */
export function guessOrder(stamps: readonly string[]): DateOrder | null {
  const open = stamps.filter((stamp) => numbered.test(stamp));
  if (open.length === 0) return null;
  const spans = (['day-first', 'month-first'] as const).map((order) => ({
    order,
    span: spanOf(open, order),
  }));
  return spans.reduce((a, b) => (b.span < a.span ? b : a)).order;
}

function spanOf(stamps: readonly string[], order: DateOrder): number {
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const text of stamps) {
    // A number past 12 is a day in any order, and then the order is the other.
    const [first = 0, second = 0] = text
      .split(/\D+/)
      .filter((d) => d !== '')
      .map(Number);
    if ((order === 'day-first' ? second : first) > 12) return Number.POSITIVE_INFINITY;
    const stamp = readStamp(text, { order, year: undefined, day: undefined });
    if (typeof stamp === 'string') continue;
    from = Math.min(from, stamp.clock);
    to = Math.max(to, stamp.clock);
  }
  return to - from;
}

/** A year that the name of a file tells, `log-20260314` or `2026-03`; `null` without one. */
export function yearInName(file: string): number | null {
  const found = /(?<!\d)((?:19|20)\d{2})(?:[-_.]?[01]\d(?:[-_.]?[0-3]\d)?)?(?!\d)/.exec(file)?.[1];
  return found === undefined ? null : Number(found);
}
