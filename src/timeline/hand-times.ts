import { aalenJohansen, incidenceQuantile } from '../statistics/aalen-johansen.ts';
import type { ExpectedTime, TimelineEvent } from '../vocabulary.ts';
import type { PairFacts } from './facts.ts';
import { countUntil, track } from './tracks.ts';

/** How long the work of hands took in swaps that were logged, whatever the module; `null` where nobody's tell. */
export interface HandTimes {
  /** From a removal to the insertion that follows it. */
  readonly in: ExpectedTime | null;
  /** From an insertion to the start of the reflash that follows it. */
  readonly identified: ExpectedTime | null;
}

/** The same over some pairs. What only polls or notes tell is left out: their minutes say little of seconds. */
export function handTimes(fleet: readonly PairFacts[]): HandTimes {
  const times = fleet.flatMap(({ timeline, moduleChanges }) =>
    moduleChanges.map(({ half, removed, inserted }) => {
      if (inserted === null || !isExact(inserted)) return { out: null, waiting: null };
      const reflashes = track(timeline, half, 'reflash-start');
      const removals = track(timeline, half, 'removed');
      const reflash = reflashes[countUntil(reflashes, inserted.time)];
      const next = removals[countUntil(removals, inserted.time)]?.time ?? Number.POSITIVE_INFINITY;
      const isOwn = reflash !== undefined && isExact(reflash) && reflash.time < next;
      return {
        out: isExact(removed) ? (inserted.time - removed.time) / 1000 : null,
        waiting: isOwn ? (reflash.time - inserted.time) / 1000 : null,
      };
    }),
  );
  return {
    in: expectedOf(times.flatMap((t) => t.out ?? [])),
    identified: expectedOf(times.flatMap((t) => t.waiting ?? [])),
  };
}

function isExact({ kind, time, earliest }: TimelineEvent): boolean {
  return kind === 'entry' && earliest === time;
}

function expectedOf(seconds: readonly number[]): ExpectedTime | null {
  if (seconds.length === 0) return null;
  const steps = aalenJohansen(seconds.map((s) => ({ seconds: s, end: 'ended' })));
  const quantile = (share: number): number | null => incidenceQuantile(steps, share).value;
  return { median: quantile(0.5), p95: quantile(0.95), n: seconds.length };
}
