import type { Instant } from '../vocabulary.ts';
import type { Stamp } from './durations.ts';
import { byTime } from './sightings.ts';

/** What one or several streams tell. */
interface Told extends Stamp {
  readonly streams: ReadonlySet<string>;
  /** As it was printed, where no source with a clock that is right tells it; else `null`. */
  readonly printed: Instant | null;
}

/**
 * What only a clock tells that is off, with bounds that reach from where it may have been to where it was printed; but not past
 * what the same stream told after it, where a clock that is right tells when that was. Takes and gives them in the order of time.
 * Source: design.md, section 2, Clocks.
 */
export function asPrinted<T extends Told>(items: readonly T[]): readonly T[] {
  if (items.every((item) => item.printed === null)) return items;
  const next = new Map<string, Stamp>();
  return items
    .toReversed()
    .map((item) => {
      if (item.printed !== null) return reaching(item, item.printed, soonest(item, next));
      for (const stream of item.streams) next.set(stream, item);
      return item;
    })
    .toReversed()
    .sort(byTime);
}

/** The last instant before anything that a stream of this item told later. */
function soonest({ streams }: Told, next: ReadonlyMap<string, Stamp>): number {
  const later = [...streams].flatMap((stream) => next.get(stream) ?? []);
  return Math.min(...later.map(({ time, earliest }) => (earliest < time ? earliest : time - 1)));
}

function reaching<T extends Told>(item: T, printed: Instant, most: number): T {
  return {
    ...item,
    time: Math.max(item.time, Math.min(printed.time, most)),
    earliest: Math.min(item.earliest, printed.earliest),
  };
}
