import type { Interval } from '../vocabulary.ts';
import { countUntil } from './tracks.ts';

/** Of many spans: when the last of those ends that begin up to an instant, itself included; -Infinity where none does. */
export function spanEnds(spans: readonly Interval[]): (time: number) => number {
  const sorted = [...spans].sort((a, b) => a.from - b.from);
  const begins = sorted.map(({ from }) => ({ time: from }));
  const ends: number[] = [];
  for (const { to } of sorted) ends.push(Math.max(to, ends.at(-1) ?? Number.NEGATIVE_INFINITY));
  return (time) => ends[countUntil(begins, time) - 1] ?? Number.NEGATIVE_INFINITY;
}
