import type { CensusRow } from '../charts/census.ts';
import type { ForecastRow } from '../charts/forecast.ts';
import type { LossRateRow } from '../charts/loss-rates.ts';
import type { MonthRow } from '../charts/losses-over-time.ts';
import type { DriftRow } from '../charts/sync-drift.ts';
import { type CensusCount, type Fleet, type SyncDrift, sayDuration } from '../vocabulary.ts';
import { terminal } from './escape.ts';
import { asFigure } from './json.ts';
import { labelPlaces } from './label-places.ts';
import { mostOf } from './most-of.ts';

/** What a picture can hold and still be read: pairs in a list, pairs over time, times of one drift. */
const most = { pairs: 40, pairsOverTime: 12, steps: 400 };
const yearSeconds = 365.25 * 86_400;

/**
 * The pairs with a rate, the worst first as they are given; the fleet's is that of all losses in all observed time. None
 * where one pair stands alone: there is nothing to see it beside.
 */
export function lossRateRows({ pairs }: Fleet): readonly LossRateRow[] {
  const losses = pairs.reduce((sum, pair) => sum + pair.losses, 0);
  const years = pairs.reduce((sum, pair) => sum + pair.observedSeconds, 0) / yearSeconds;
  if (years === 0) return [];
  const fleetRate = losses / years;
  const rated = pairs.flatMap(({ pair, ratePerYear: { value, low, high }, standsOut }) =>
    value === null || low === null || high === null
      ? []
      : [{ pair, rate: asFigure(value), low: asFigure(low), high: asFigure(high), standsOut }],
  );
  if (rated.length < 2) return [];
  return rated.slice(0, most.pairs).map((row, index) => ({
    ...row,
    pair: terminal(row.pair),
    fleetRate,
    fleetWord: index === 0 ? `fleet ${fleetRate.toFixed(1)}` : '',
    word: row.standsOut ? 'stands out' : '',
  }));
}

/** The months of the pairs with most losses; none where no pair lost its partner, or where one month is all there is. */
export function monthRows({ pairs, months }: Fleet): readonly MonthRow[] {
  if (new Set(months.map((month) => month.from)).size < 2) return [];
  const shown = pairs
    .filter((pair) => pair.losses > 0)
    .sort((a, b) => b.losses - a.losses)
    .slice(0, most.pairsOverTime);
  return shown.flatMap(({ pair }) =>
    months
      .filter((month) => month.pair === pair)
      .map(({ from, losses, observedSeconds }, index) => {
        const to = nextMonth(from);
        const isObserved = observedSeconds > 0;
        const label = index === 0 ? terminal(pair) : '';
        return { pair: terminal(pair), label, from, to, at: (from + to) / 2, losses, isObserved };
      }),
  );
}

function nextMonth(begin: number): number {
  const date = new Date(begin);
  // `Date.UTC` takes the first century for the twentieth.
  return new Date(0).setUTCFullYear(date.getUTCFullYear(), date.getUTCMonth() + 1, 1);
}

/** The sync times of one group and cause, the newest of very many. */
export function driftRows({ group, target, low, high, points }: SyncDrift): readonly DriftRow[] {
  const shown = points.slice(-most.steps);
  const said = outsideSaid(shown);
  return shown.map(({ time, seconds, average, isOutside }, index) => {
    const isLast = index === shown.length - 1;
    const word = isLast ? `${sayDuration(average)}, outside its limits` : 'outside';
    return {
      group: terminal(group),
      ...{ time, seconds, average, target, low, high, isOutside },
      word: said.includes(index) ? word : '',
      targetWord: isLast ? `usual ${sayDuration(target)}` : '',
      lowWord: isLast ? sayDuration(Math.max(0, low)) : '',
      highWord: isLast ? sayDuration(high) : '',
    };
  });
}

/** The points beside which it is said that they are outside: the last, and of the others those with room for a word. */
function outsideSaid(points: SyncDrift['points']): readonly number[] {
  const [first, last] = [points.at(0), points.at(-1)];
  if (first === undefined || last === undefined) return [];
  const range = last.time - first.time;
  // What is said of the last point is long, and stands left of it.
  const roomTo = last.isOutside ? last.time - range / 2 - 1 : last.time;
  const said: number[] = [];
  let from = first.time;
  for (const [index, { isOutside, time }] of points.entries()) {
    if (!isOutside || time < from || time > roomTo) continue;
    said.push(index);
    from = time + range / 8;
  }
  return last.isOutside ? [...said, points.length - 1] : said;
}

/** So many labels find room, one over the other, beside a census. */
const labelsInHeight = 7;

/**
 * The census of one signal: each value that most halves say at the end, at every time, 0 where no half said it. None where it was never logged, or
 * counted once: a line needs two counts.
 */
export function censusRows(
  { census }: Pick<Fleet, 'census'>,
  signal: CensusCount['signal'],
): readonly CensusRow[] {
  const own = census.filter((c) => c.signal === signal);
  const times = [...new Set(own.map((c) => c.time))];
  const all = [...new Set(own.map((c) => c.value))];
  if (times.length < 2 || all.every((value) => value === null)) return [];
  const halvesAt = (value: string | null, time: number | undefined): number =>
    own.find((c) => c.time === time && c.value === value)?.halves ?? 0;
  const values = mostOf(all, (value) => halvesAt(value, times.at(-1)));
  const highest = Math.max(...own.map((c) => c.halves));
  const atEnd = values.map((value) => halvesAt(value, times.at(-1)));
  const places = labelPlaces(atEnd, highest / labelsInHeight, highest);
  return values.flatMap((value, line) =>
    times.map((time, index) => {
      const halves = halvesAt(value, time);
      const name = value === null ? 'not known' : terminal(value);
      const label = index === times.length - 1 ? `${name}: ${halves}` : '';
      return { time, value: name, halves, label, labelAt: places[line] ?? halves };
    }),
  );
}

/** The steps of the forecast; none where there is one alone, or too few reflashes for limits. */
export function forecastRows({ forecast }: Fleet): readonly ForecastRow[] {
  if (forecast === null || forecast.steps.length < 2) return [];
  const { steps, reflashes: learntFrom, failed, confidence } = forecast;
  const percent = 100 * confidence;
  return steps.flatMap(({ swaps, hours, low, high }, index) => {
    if (low === null || high === null) return [];
    const label =
      index === steps.length - 1 ? `${sayDuration(low * 3600)} to ${sayDuration(high * 3600)}` : '';
    return [{ swaps, hours, low, high, label, learntFrom, failed, percent }];
  });
}
