import type { Source, TimelineEvent } from '../vocabulary.ts';

/**
 * The least and the most time from one happening to a later one, in seconds, by the clocks of the files that tell both: what
 * such a clock is off cancels out. `null` where no file tells both. `low` below 0: their bounds overlap there too.
 */
export function byOwnClock(start: TimelineEvent, end: TimelineEvent): { low: number; high: number } | null {
  const both = start.sources.flatMap((first) =>
    end.sources.flatMap((last) => (last.file === first.file ? [spanOf(first, last, start, end)] : [])),
  );
  if (both.length === 0) return null;
  const low = both.reduce((most, span) => Math.max(most, span.low), Number.NEGATIVE_INFINITY);
  const high = both.reduce((least, span) => Math.min(least, span.high), Number.POSITIVE_INFINITY);
  // Sources that contradict each other measure nothing.
  return low <= high ? { low, high } : null;
}

function spanOf(
  first: Source,
  last: Source,
  start: TimelineEvent,
  end: TimelineEvent,
): { low: number; high: number } {
  const slack = Math.max(start.resolution, end.resolution);
  return {
    low: (last.printed.earliest - first.printed.time - slack) / 1000,
    high: (last.printed.time - first.printed.earliest + slack) / 1000,
  };
}
