import { clip, total } from '../timeline/coverage.ts';
import type { PairFacts } from '../timeline/facts.ts';
import type { Interval, PairMonth } from '../vocabulary.ts';
import { monthTable } from './tables.ts';

/** The losses and bouts of every pair in each month of its log, with the time it was observed in; by pair, then month. */
export function lossMonths(fleet: readonly PairFacts[]): readonly PairMonth[] {
  const months = fleet.flatMap(({ timeline }) =>
    monthsOf(timeline.from, timeline.to, () => timeline.events.map((e) => e.time)).map(({ from, to }) => ({
      pair: timeline.pair,
      from,
      observedSeconds: total(clip(timeline.observed, from, to)) / 1000,
    })),
  );
  const losses = fleet.flatMap((facts) =>
    facts.losses.flatMap(({ kind, event }) =>
      kind === 'counted' ? [{ pair: facts.timeline.pair, from: monthOf(event.time) }] : [],
    ),
  );
  const bouts = fleet.flatMap((facts) =>
    facts.bouts.map(({ time }) => ({ pair: facts.timeline.pair, from: monthOf(time) })),
  );
  return monthTable(months, losses, bouts);
}

/** A century: logs that reach over more hold a wrong clock. */
const mostMonths = 1200;
const leastMonthMs = 28 * 86_400_000;

/** The calendar months, UTC, that hold some of a span; of a span of more than a century those that hold one of `times`. */
export function monthsOf(from: number, to: number, times: () => readonly number[]): readonly Interval[] {
  if (to - from > mostMonths * leastMonthMs)
    return [...new Set(times().map(monthOf))]
      .sort((a, b) => a - b)
      .map((begin) => ({ from: begin, to: nextMonth(begin) }));
  const months: Interval[] = [];
  for (let begin = monthOf(from); begin <= to; begin = nextMonth(begin))
    months.push({ from: begin, to: nextMonth(begin) });
  return months;
}

/** The first instant of the calendar month, UTC, that holds an instant. */
export function monthOf(time: number): number {
  return monthsFrom(time, 0);
}

function nextMonth(begin: number): number {
  return monthsFrom(begin, 1);
}

function monthsFrom(time: number, months: number): number {
  const date = new Date(time);
  // `Date.UTC` takes the first century for the twentieth.
  return new Date(0).setUTCFullYear(date.getUTCFullYear(), date.getUTCMonth() + months, 1);
}
