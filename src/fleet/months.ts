import { clip, total } from '../timeline/coverage.ts';
import type { PairFacts } from '../timeline/facts.ts';
import type { Interval, PairMonth } from '../vocabulary.ts';
import { monthTable } from './tables.ts';

/** The losses of every pair in each month of its log, with the time it was observed in; by pair, then month. */
export function lossMonths(fleet: readonly PairFacts[]): readonly PairMonth[] {
  const months = fleet.flatMap(({ timeline }) =>
    monthsOf(timeline.from, timeline.to).map(({ from, to }) => ({
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
  return monthTable(months, losses);
}

/** The calendar months, UTC, that hold some of a span. */
export function monthsOf(from: number, to: number): readonly Interval[] {
  const months: Interval[] = [];
  for (let begin = monthOf(from); begin <= to; begin = nextMonth(begin))
    months.push({ from: begin, to: nextMonth(begin) });
  return months;
}

/** The first instant of the calendar month, UTC, that holds an instant. */
export function monthOf(time: number): number {
  const date = new Date(time);
  return Date.UTC(date.getUTCFullYear(), date.getUTCMonth());
}

function nextMonth(begin: number): number {
  const date = new Date(begin);
  return Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + 1);
}
