import { type BoutsAhead, type FleetInBrief, type Forecast, sayDuration } from '../vocabulary.ts';
import { sayNames } from './fleet-words.ts';
import { sayCount } from './words.ts';

const hourSeconds = 3600;

/** Hours as a duration. */
export function sayHours(hours: number): string {
  return sayDuration(hours * hourSeconds);
}

/** The limits of a forecast, or that there are not enough reflashes for them. */
export function sayForecastLimits({ low, high }: Pick<Forecast, 'low' | 'high'>): string {
  return low === null || high === null ? 'not enough data' : `${sayHours(low)} to ${sayHours(high)}`;
}

/** How long the campaign takes, or what is missing to say so. */
export function forecastSentence({ forecast }: FleetInBrief): string {
  if (forecast === null)
    return 'How long the next swaps take is not known: no reflash in the logs was followed by a partner that stayed ready.';
  const { swaps, hours, low, high, reflashes, needed, confidence } = forecast;
  const next = swaps === 1 ? 'the next swap' : `the next ${swaps} swaps`;
  if (low !== null && high !== null)
    return `Expect ${sayForecastLimits(forecast)} of bring-up for ${next} (${100 * confidence} % prediction)${repeats(forecast)}.`;
  const why =
    reflashes < needed
      ? `${needed} are needed for a prediction interval`
      : 'their times are too alike for a prediction interval';
  return `Going by ${sayCount(reflashes, 'reflash', 'reflashes')}, expect about ${sayHours(hours)} of bring-up for ${next}; ${why}.`;
}

function repeats({ reflashes, failed }: Forecast): string {
  if (failed === 0) return `, if none has to be repeated: none of ${reflashes} reflashes failed so far`;
  return `, repeats included: ${failed} of ${reflashes} reflashes failed so far`;
}

/** How many bouts of losses the next year brings; none where no pair was observed for long enough. */
export function boutsSentences(fleet: FleetInBrief): readonly string[] {
  const { boutsNextYear } = fleet;
  if (boutsNextYear === null) return [];
  const { pairs } = boutsNextYear;
  const where = pairs.length === 1 ? `at ${pairs[0]?.pair}` : `at ${pairs.length} pairs`;
  const left = leftOut(fleet);
  return [
    `Expect ${sayBouts(boutsNextYear)} of losses ${where} in the next year (95 % prediction)${left && `; ${left}`}.`,
  ];
}

/** The pairs whose rate so far says nothing of the next year; empty where there is none. */
export function leftOut({ pairs }: FleetInBrief): string {
  const changed = pairs.filter((p) => p.change !== null).map((p) => p.pair);
  if (changed.length === 0) return '';
  return `${sayNames(changed)} ${changed.length === 1 ? 'is' : 'are'} left out because ${changed.length === 1 ? 'its rate' : 'their rates'} changed`;
}

function sayBouts({ low, high }: Pick<BoutsAhead, 'low' | 'high'>): string {
  if (low === 0) return high === 0 ? 'no bouts' : `up to ${sayCount(high, 'bout')}`;
  return low === high ? sayCount(high, 'bout') : `${low} to ${high} bouts`;
}

/** How the forecast of the campaign was computed. */
export function forecastComputed({ forecast }: FleetInBrief): string {
  if (forecast === null) return '';
  const { reflashes, failed, needed, confidence } = forecast;
  return [
    `Counted is bring-up only, two modules a swap, from the end of a reflash until the partner was ready and stayed ready, without people, permits and waiting; n = ${reflashes} reflashes, ${failed === 0 ? 'none' : failed} of which failed (lost, superseded, or not ready within 15 min).${failed === 0 ? '' : ' A failed one counts for the time observed, 15 min at most, and is repeated.'}`,
    `The interval is a ${100 * confidence} % prediction of the total by the studentised bootstrap (Efron and Tibshirani, section 12.5, 1993), which needs ${needed} reflashes.`,
    ...(failed === 0 ? [neverFailed(reflashes)] : []),
    'Wrong if the next modules, their firmware or the way of working differ; too wide if times have two peaks.',
  ].join(' ');
}

/** Where none failed: the upper 95 % limit of the share that fails all the same, 1 less the n-th root of 0.05. */
function neverFailed(reflashes: number): string {
  const most = Math.ceil(100 * (1 - 0.05 ** (1 / reflashes)));
  return `No repeats are counted because none failed so far; the true share that fails may be up to ${most} % (95 % limit).`;
}

/** How the prediction of bouts was computed. */
export const boutsComputed =
  'Counted are bouts of the pairs observed for at least 30 days, over their observed time. Limits are an exact 95 % prediction of a Poisson count (Hahn and Meeker, Statistical Intervals, chapter 7, 1991), widened where several pairs lose their partners within an hour. Pairs whose rate changed by more than chance are left out. Wrong if pairs get better or worse, are due for work, or were observed only briefly and differ from the rest.';
