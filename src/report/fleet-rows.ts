import type { CensusRow } from '../charts/census.ts';
import type { ForecastRow } from '../charts/forecast.ts';
import type { DriftRow } from '../charts/sync-drift.ts';
import { type CensusCount, type Fleet, type SyncDrift, sayDuration } from '../vocabulary.ts';
import { terminal } from './escape.ts';
import { labelPlaces } from './label-places.ts';
import { mostOf } from './most-of.ts';

/** What a picture can hold and still be read: times of one drift. */
const mostSteps = 400;

/** The sync times of one group and cause, the newest of very many. */
export function driftRows({ group, target, low, high, points }: SyncDrift): readonly DriftRow[] {
  const shown = points.slice(-mostSteps);
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
