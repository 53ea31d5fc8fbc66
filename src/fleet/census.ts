import type { PairFacts } from '../timeline/facts.ts';
import { identityAt } from '../timeline/module-changes.ts';
import type { CensusCount } from '../vocabulary.ts';
import { monthsOf } from './months.ts';
import { halvesCounted } from './tables.ts';

/**
 * Which firmware and models the fleet ran at the start of each month and where its logs end: halves of pairs whose log
 * holds that time. A half that never said is counted as not known; one that is empty then, not at all.
 */
export function censusOf(fleet: readonly PairFacts[]): readonly CensusCount[] {
  const [first, last] = fleet.reduce(
    ([from, to], { timeline }) => [Math.min(from, timeline.from), Math.max(to, timeline.to)],
    [Infinity, -Infinity],
  );
  if (!(first <= last)) return [];
  const begins = monthsOf(first, last, () =>
    fleet.flatMap(({ timeline }) => timeline.events.map((e) => e.time)),
  ).map(({ from }) => from);
  const times = [...begins.filter((time) => time > first && time < last), last];
  return halvesCounted(times.flatMap((time) => fleet.flatMap((facts) => rowsAt(facts, time, time === last))));
}

/** At the end of all logs every pair counts as its own log left it. */
function rowsAt(
  { timeline }: PairFacts,
  time: number,
  isLast: boolean,
): readonly Omit<CensusCount, 'halves'>[] {
  if (time < timeline.from || (time > timeline.to && !isLast)) return [];
  return timeline.halves.flatMap((half) => {
    const identity = identityAt(timeline, half, time);
    return (['firmware', 'model'] as const).map((signal) => ({ time, signal, value: identity[signal] }));
  });
}
