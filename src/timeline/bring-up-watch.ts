import type { BringUpCause, Measure, TimelineEvent } from '../vocabulary.ts';
import { between, censored, exactly, measured, type Stamp } from './durations.ts';
import { cutAt, type Stretch } from './holding.ts';
import { countUntil, countWhile, firstFrom } from './tracks.ts';

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
  readonly why: 'next-start' | 'switchover' | 'other-inserted' | 'removed' | 'log-end';
}

/**
 * The stretches of a good state that a bring-up is watched for: those that began after its start, cut where the watch ends, so
 * that a reflash or removal before the hold time is over has not let it hold. Of an unobserved span the part after the start.
 * `all` in the order of `stretchesOf`.
 */
export function watchedStretches(
  all: readonly Stretch[],
  start: TimelineEvent,
  end: End,
): readonly Stretch[] {
  const limit = end.why === 'log-end' ? Number.POSITIVE_INFINITY : end.time;
  const during: Stretch[] = [];
  for (let place = countWhile(all, (s) => s.start.time < start.earliest); ; place += 1) {
    const stretch = all[place];
    if (stretch === undefined) return during;
    const { time, earliest, resolution } = stretch.start;
    if (time > end.time && earliest > end.time) return during;
    const isAfter = stretch.isSeen ? time >= start.time && time > start.earliest : time > start.earliest;
    const isBefore = earliest < end.time || (stretch.isSeen && time <= end.time);
    if (!isAfter || !isBefore) continue;
    // What was seen only after the end of the watch may have begun before it.
    const isSeen = stretch.isSeen && time <= end.time;
    const from = {
      time,
      earliest: isSeen ? earliest : Math.max(earliest, start.earliest),
      resolution,
    };
    during.push(cutAt({ ...stretch, start: from, isSeen }, limit));
  }
}

/** Of some stretches the earliest instant at which one may have begun; `null` without any. */
export function earliestOf(stretches: readonly { readonly start: Stamp }[]): Stamp | null {
  return stretches.reduce<Stamp | null>(
    (least, { start }) => (least === null || start.earliest < least.earliest ? start : least),
    null,
  );
}

/**
 * The wait from a start to a state: at the earliest to `may`, at the latest to `must`. Censored where there is none that must:
 * then it is the time watched, or longer, but for what may have been so sooner.
 */
export function waited(start: TimelineEvent, may: Stamp | null, must: Stamp | null, end: End): Measure {
  const shortest = may === null ? Number.POSITIVE_INFINITY : between(start, may).low;
  if (must === null) {
    const watched = between(start, exactly(Math.max(end.time, start.time)));
    return { ...censored(watched), low: Math.min(watched.low, shortest) };
  }
  const whole = between(start, must);
  return measured({ ...whole, low: Math.min(whole.low, shortest) });
}

/**
 * A good state that no log saw broken by the start, as between two slow polls: how long it took is not known. An entry that only
 * says again what was so breaks nothing.
 */
export function isUnbroken(
  steps: readonly TimelineEvent[],
  start: TimelineEvent,
  end: number,
  good: string,
): boolean {
  const place = countUntil(steps, start.earliest);
  const during = firstFrom(steps, place, (s) => s.value !== good);
  return (during === undefined || during.time > end) && steps[place - 1]?.value === good;
}
