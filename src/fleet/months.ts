import { clip, total } from '../timeline/coverage.ts';
import { type ComparedPair, compareText, type Interval, type PairMonth } from '../vocabulary.ts';

/** The losses and bouts of every pair in each month of its log, with the time it was observed in; by pair, then month. */
export function lossMonths(fleet: readonly MonthsOf[]): readonly PairMonth[] {
  return [...fleet].sort((a, b) => compareText(a.pair, b.pair)).flatMap(monthsOfPair);
}

type MonthsOf = Pick<ComparedPair, 'pair' | 'from' | 'to' | 'observed' | 'losses' | 'bouts' | 'activeMonths'>;

function monthsOfPair({
  pair,
  from,
  to,
  observed,
  losses,
  bouts,
  activeMonths,
}: MonthsOf): readonly PairMonth[] {
  const counted = losses.filter((l) => l.kind === 'counted');
  return monthsOf(from, to, activeMonths).map((month) => ({
    pair,
    from: month.from,
    observedSeconds: total(clip(observed, month.from, month.to)) / 1000,
    losses: countIn(counted, month),
    bouts: countIn(bouts, month),
  }));
}

function countIn(moments: readonly { readonly time: number }[], { from, to }: Interval): number {
  return moments.filter(({ time }) => time >= from && time < to).length;
}

/** A century: logs that reach over more hold a wrong clock. */
const mostMonths = 1200;
const leastMonthMs = 28 * 86_400_000;

/** The calendar months, UTC, that hold some of a span; of a span of more than a century only those that are `active`. */
export function monthsOf(from: number, to: number, active: readonly number[]): readonly Interval[] {
  if (to - from > mostMonths * leastMonthMs)
    return [...new Set(active)].sort((a, b) => a - b).map((begin) => ({ from: begin, to: nextMonth(begin) }));
  const months: Interval[] = [];
  for (let begin = monthOf(from); begin <= to; begin = nextMonth(begin))
    months.push({ from: begin, to: nextMonth(begin) });
  return months;
}

/** The first instant of the calendar month, UTC, that holds an instant. */
export function monthOf(time: number): number {
  return monthsFrom(time, 0);
}

/** The first instant of the month after one that begins then. */
export function nextMonth(begin: number): number {
  return monthsFrom(begin, 1);
}

function monthsFrom(time: number, months: number): number {
  const date = new Date(time);
  // `Date.UTC` takes the first century for the twentieth.
  return new Date(0).setUTCFullYear(date.getUTCFullYear(), date.getUTCMonth() + months, 1);
}
