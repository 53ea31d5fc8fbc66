import type { CensusRow } from '../charts/census.ts';
import type { ForecastRow } from '../charts/forecast.ts';
import type { LossRateRow } from '../charts/loss-rates.ts';
import type { MonthRow } from '../charts/losses-over-time.ts';
import type { DriftRow } from '../charts/sync-drift.ts';
import type { SurvivalRow } from '../charts/sync-time-survival.ts';
import {
  type BringUpCause,
  type CensusCount,
  type Fleet,
  type SyncDrift,
  sayDuration,
} from '../vocabulary.ts';
import { terminal } from './escape.ts';
import { asFigure } from './json.ts';

/** What a picture can hold and still be read: pairs in a list, pairs over time, steps of one curve. */
const most = { pairs: 40, pairsOverTime: 12, steps: 400 };
const yearSeconds = 365.25 * 86_400;
const fiveMinutes = 300;

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
  return Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + 1);
}

/** The curves of the groups that have a bring-up by one cause and saw one become ready. */
export function survivalRows({ groups }: Fleet, cause: BringUpCause): readonly SurvivalRow[] {
  const own = groups.filter((g) => g.cause === cause && g.survival.length > 0);
  return own.flatMap(({ group, attempts, censored, survival }, index) => {
    const name = terminal(group);
    const points = [{ seconds: 0, surviving: 1, low: 1, high: 1 }, ...thinned(survival)];
    // Labels step down the curves, so that those of groups that lie close do not meet.
    const labelled = points.findIndex((p) => p.surviving <= 1 - (index + 1) / (own.length + 1) + 1e-9);
    return points.map(({ seconds, surviving, low, high }, at) => ({
      group: name,
      attempts,
      censored,
      seconds,
      percent: asFigure(surviving * 100),
      low: asFigure((low ?? surviving) * 100),
      high: asFigure((high ?? surviving) * 100),
      label: at === labelled ? `${name} (n = ${attempts})` : '',
      limit: fiveMinutes,
      limitWord: index === 0 && at === 0 ? 'five minutes' : '',
    }));
  });
}

/** A curve of very many steps, so many of them as the picture can show, the last among them. */
function thinned<T>(steps: readonly T[]): readonly T[] {
  const stride = Math.ceil(steps.length / most.steps);
  return steps.filter((_, index) => index % stride === 0 || index === steps.length - 1);
}

/** The sync times of one group and cause, the newest of very many. */
export function driftRows({ group, target, low, high, points }: SyncDrift): readonly DriftRow[] {
  const shown = points.slice(-most.steps);
  return shown.map(({ time, seconds, average, isOutside }, index) => {
    const isLast = index === shown.length - 1;
    return {
      group: terminal(group),
      ...{ time, seconds, average, target, low, high, isOutside },
      word: isLast && isOutside ? `${sayDuration(average)}, outside its limits` : '',
      targetWord: isLast ? `usual ${sayDuration(target)}` : '',
      lowWord: isLast ? sayDuration(Math.max(0, low)) : '',
      highWord: isLast ? sayDuration(high) : '',
    };
  });
}

/**
 * The census of one signal: each value at every time, 0 where no half said it. None where it was never logged, or
 * counted once: a line needs two counts.
 */
export function censusRows({ census }: Fleet, signal: CensusCount['signal']): readonly CensusRow[] {
  const own = census.filter((c) => c.signal === signal);
  const times = [...new Set(own.map((c) => c.time))];
  const values = [...new Set(own.map((c) => c.value))];
  if (times.length < 2 || values.every((value) => value === null)) return [];
  return values.flatMap((value) =>
    times.map((time, index) => {
      const halves = own.find((c) => c.time === time && c.value === value)?.halves ?? 0;
      const name = value === null ? 'not known' : terminal(value);
      return {
        time,
        value: name,
        halves,
        label: index === times.length - 1 && halves > 0 ? `${name}: ${halves}` : '',
      };
    }),
  );
}

/** The steps of the forecast; none where there is one alone, or no reflash to learn from. */
export function forecastRows({ forecast, attempts }: Fleet): readonly ForecastRow[] {
  const steps = forecast?.steps ?? [];
  if (steps.length < 2) return [];
  const learntFrom = attempts.filter((a) => a.cause === 'reflash' && a.settledSeconds !== null).length;
  return steps.flatMap(({ swaps, hours, low, high }, index) => {
    if (hours === null || low === null || high === null) return [];
    const label =
      index === steps.length - 1 ? `${sayDuration(low * 3600)} to ${sayDuration(high * 3600)}` : '';
    return [{ swaps, hours, low, high, label, learntFrom }];
  });
}
