import { countUntil } from '../timeline/tracks.ts';
import type { CensusCount, ComparedPair } from '../vocabulary.ts';
import { monthsOf } from './months.ts';
import { halvesCounted } from './tables.ts';

type Reporting = Pick<ComparedPair, 'from' | 'to' | 'identities' | 'activeMonths'>;

/**
 * Which firmware and models the fleet ran at the start of each month and where its logs end: halves of pairs whose log
 * holds that time. A half that never said is counted as not known; one that is empty then, not at all.
 */
export function censusOf(fleet: readonly Reporting[]): readonly CensusCount[] {
  const [first, last] = fleet.reduce(
    ([least, most], { from, to }) => [Math.min(least, from), Math.max(most, to)],
    [Infinity, -Infinity],
  );
  if (!(first <= last)) return [];
  const active = [...new Set(fleet.flatMap(({ activeMonths }) => activeMonths))];
  const begins = monthsOf(first, last, active).map(({ from }) => from);
  const times = [...begins.filter((time) => time > first && time < last), last];
  return halvesCounted(times.flatMap((time) => countsAt(fleet, time, time === last)));
}

/** How many halves report each value at an instant. At the end of all logs every pair counts as its own log left it. */
function countsAt(fleet: readonly Reporting[], time: number, isLast: boolean): readonly CensusCount[] {
  const counts = { firmware: new Map<string | null, number>(), model: new Map<string | null, number>() };
  for (const { from, to, identities } of fleet) {
    if (time < from || (time > to && !isLast)) continue;
    for (const { signal, steps } of identities) {
      const value = steps[countUntil(steps, time) - 1]?.value ?? null;
      counts[signal].set(value, (counts[signal].get(value) ?? 0) + 1);
    }
  }
  return (['firmware', 'model'] as const).flatMap((signal) =>
    [...counts[signal]].map(([value, halves]) => ({ time, signal, value, halves })),
  );
}
