import type { BringUpCause, TimelineEvent } from '../vocabulary.ts';
import { countUntil } from './tracks.ts';

/** What began a bring-up. */
export interface Start {
  readonly half: string;
  readonly cause: BringUpCause;
  /** The event that began it; for the active half the one that made it standby again. */
  readonly event: TimelineEvent;
}

/** Where the watch of a bring-up ends, and why. */
export interface End {
  readonly time: number;
  readonly why: 'next-start' | 'switchover' | 'removed' | 'log-end';
}

/** Until when a state of this bring-up can have held: the log's end, or whatever ended the watch before. */
export function holdLimit(end: End, logEnd: number): number {
  return end.why === 'log-end' ? logEnd : end.time;
}

/** A good state that no log saw broken by the start, as between two slow polls: how long it took is not known. */
export function isUnbroken(
  steps: readonly TimelineEvent[],
  start: TimelineEvent,
  end: number,
  good: string,
): boolean {
  const place = countUntil(steps, start.earliest);
  const during = steps[place];
  return (during === undefined || during.time > end) && steps[place - 1]?.value === good;
}
