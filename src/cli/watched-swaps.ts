import type { PairTimeline, Swap, SwapNow } from '../vocabulary.ts';

/** Which swaps a watch goes along with: those that were open while it watched, or began since. */
export interface WatchedSwaps {
  /** Takes in what the logs show now; a pair whose files are gone for a while stays as it was. */
  take(now: readonly SwapNow[], timelines: readonly Pick<PairTimeline, 'pair' | 'to'>[]): void;
  /** The swaps that the watch goes along with, as they were last; where there are none, those that were over before. */
  swaps(): readonly Swap[];
  /** Pairs were in work, and none is any more. */
  isOver(): boolean;
}

/** How a swap stood when its pair was last read. */
interface Standing {
  readonly swap: Swap;
  readonly isOpen: boolean;
}

/** No swap was seen yet. */
export function watchedSwaps(): WatchedSwaps {
  // Where the log of a pair ended when it was first read: what began later, began while we watched.
  const firstEnds = new Map<string, number>();
  const inWork = new Set<string>();
  const standing = new Map<string, Standing>();
  return {
    take(now, timelines) {
      for (const { pair, to } of timelines) if (!firstEnds.has(pair)) firstEnds.set(pair, to);
      for (const { pair, awaits, swap } of now) {
        if (swap === null) continue;
        const isOpen = awaits !== null;
        standing.set(pair, { swap, isOpen });
        const begun = swap.halves[0].removedAt.time;
        if (isOpen || begun > (firstEnds.get(pair) ?? begun)) inWork.add(pair);
      }
    },
    swaps() {
      const own = [...standing].filter(([pair]) => inWork.has(pair));
      return (own.length > 0 ? own : [...standing]).map(([, { swap }]) => swap);
    },
    isOver: () => inWork.size > 0 && [...inWork].every((pair) => standing.get(pair)?.isOpen === false),
  };
}
