import type { LossRateRow } from '../charts/loss-rates.ts';
import type { LossRatioRow } from '../charts/loss-ratios.ts';
import type { MonthRow } from '../charts/losses-over-time.ts';
import type { MeanBoutsRow } from '../charts/mean-bouts.ts';
import type { RateChangeRow } from '../charts/rate-changes.ts';
import type { Fleet, LossGroup, RateChange } from '../vocabulary.ts';
import { terminal } from './escape.ts';
import { sayMonth } from './fleet-words.ts';
import { asFigure } from './json.ts';
import { labelPlaces } from './label-places.ts';
import { isRise } from './loss-words.ts';
import { mostOf } from './most-of.ts';

/** What a picture can hold and still be read: pairs in a list, pairs over time, comparisons, steps of a curve. */
const most = { pairs: 12, pairsOverTime: 12, ratios: 40, steps: 400 };
const yearSeconds = 365.25 * 86_400;

/**
 * The pairs with a rate, the worst first as they are given; the fleet's is that of all their bouts in all their observed time.
 * None where one pair stands alone: there is nothing to see it beside.
 */
export function lossRateRows({ pairs }: Fleet): readonly LossRateRow[] {
  const judged = pairs.filter((pair) => pair.ratePerYear !== null);
  const bouts = judged.reduce((sum, pair) => sum + pair.bouts, 0);
  const years = judged.reduce((sum, pair) => sum + pair.observedSeconds, 0) / yearSeconds;
  if (judged.length < 2) return [];
  const fleetRate = asFigure(bouts / years);
  return judged.slice(0, most.pairs).map(({ pair, ratePerYear, standsOut }, index) => ({
    pair: terminal(pair),
    rate: asFigure(ratePerYear?.value ?? 0),
    low: asFigure(ratePerYear?.low ?? 0),
    high: asFigure(ratePerYear?.high ?? 0),
    standsOut: standsOut === true,
    fleetRate,
    fleetWord: index === 0 ? `fleet ${fleetRate.toFixed(1)}` : '',
    word: standsOut === true ? 'stands out' : '',
  }));
}

/** The months of the pairs with most bouts; none where no pair lost its partner, or where one month is all there is. */
export function monthRows({ pairs, months }: Fleet): readonly MonthRow[] {
  if (new Set(months.map((month) => month.from)).size < 2) return [];
  const shown = pairs
    .filter((pair) => pair.bouts > 0)
    .sort((a, b) => b.bouts - a.bouts)
    .slice(0, most.pairsOverTime);
  return shown.flatMap(({ pair }) =>
    months
      .filter((month) => month.pair === pair)
      .map(({ from, bouts, losses, observedSeconds }, index) => {
        const to = nextMonth(from);
        const isObserved = observedSeconds > 0;
        const label = index === 0 ? terminal(pair) : '';
        return { pair: terminal(pair), label, from, to, at: (from + to) / 2, bouts, losses, isObserved };
      }),
  );
}

function nextMonth(begin: number): number {
  const date = new Date(begin);
  // `Date.UTC` takes the first century for the twentieth.
  return new Date(0).setUTCFullYear(date.getUTCFullYear(), date.getUTCMonth() + 1, 1);
}

/** The curves of the groups that had a bout, of many those with most. */
export function meanBoutsRows({ lossGroups }: Fleet): readonly MeanBoutsRow[] {
  const own = mostOf(
    lossGroups.filter((g) => g.curve.length > 0),
    (g) => g.bouts,
  );
  const ends = own.map((g) => g.curve.at(-1)?.mean ?? 0);
  const highest = Math.max(...own.flatMap((g) => g.curve.map((step) => step.high ?? step.mean)));
  const places = labelPlaces(ends, highest / 12, highest);
  return own.flatMap((group, index) => curveRows(group, places[index] ?? 0));
}

function curveRows({ group, pairs, curve }: LossGroup, labelAt: number): readonly MeanBoutsRow[] {
  const stride = Math.ceil(curve.length / most.steps);
  const kept = curve.filter((_, index) => index % stride === 0 || index === curve.length - 1);
  const name = terminal(group);
  const none = { group: name, pairs, days: 0, mean: 0, low: 0, high: 0, label: '', labelAt };
  return [
    none,
    ...kept.map(({ days, mean, low, high }, index) => ({
      ...none,
      days: asFigure(days),
      mean: asFigure(mean),
      low: asFigure(low ?? mean),
      high: asFigure(high ?? mean),
      label: index === kept.length - 1 ? `${name} (${pairs === 1 ? 'one pair' : `${pairs} pairs`})` : '',
    })),
  ];
}

/** Bouts of a pair or group counted up, with the three corners of the line of its two rates. */
export function changeRows(name: string, change: RateChange): readonly RateChangeRow[] {
  const { curve, before, after, time } = change;
  const rise = isRise(change);
  const [first, last] = [curve.at(0)?.time ?? time, curve.at(-1)?.time ?? time];
  const all = before.bouts + after.bouts;
  const own = { name: terminal(name), isRise: rise };
  const corner = (at: number, bouts: number, word: string): RateChangeRow => {
    return { ...own, time: at, bouts, fitted: bouts, word };
  };
  const stride = Math.ceil(curve.length / most.steps);
  const kept = curve.filter((_, index) => index % stride === 0 || index === curve.length - 1);
  return [
    corner(first, 0, ''),
    corner(time, before.bouts, `${rise ? 'more' : 'less'} often from about ${sayMonth(time)}`),
    corner(last, all, ''),
    ...kept.map((point) => ({ ...own, ...point, fitted: null, word: '' })),
  ];
}

/** The comparisons of groups that have both limits. */
export function ratioRows({ lossRatios }: Fleet): readonly LossRatioRow[] {
  const drawn = lossRatios.flatMap(({ group, other, ratio: { value, low, high }, differs }) =>
    value === null || low === null || high === null || low <= 0
      ? []
      : [
          {
            name: `${terminal(group)} over ${terminal(other)}`,
            ratio: asFigure(value),
            low: asFigure(low),
            high: asFigure(high),
            same: 1,
            word: differs ? 'differs' : '',
            differs,
          },
        ],
  );
  return drawn.slice(0, most.ratios);
}
