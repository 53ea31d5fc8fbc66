import type { Instant, PairTimeline, Signal, TimelineEvent } from '../vocabulary.ts';
import { keyOf } from './groups.ts';

/** The steps of one state, or the happenings of one kind, of one half (or of the pair), in the order of time. */
export function track(timeline: PairTimeline, half: string | null, signal: Signal): readonly TimelineEvent[] {
  return timeline.tracks.get(keyOf(half, signal)) ?? [];
}

/**
 * The step that holds at an instant, itself included; `undefined` before the first. With `before`, steps at the very
 * instant do not count.
 */
export function stepAt(
  steps: readonly TimelineEvent[],
  time: number,
  before: 'including' | 'before' = 'including',
): TimelineEvent | undefined {
  return steps[countUntil(steps, time, before) - 1];
}

/** How many steps there are up to an instant, itself included or not: where those after it begin. */
export function countUntil(
  steps: readonly { readonly time: number }[],
  time: number,
  before: 'including' | 'before' = 'including',
): number {
  return countWhile(steps, (step) => (before === 'before' ? step.time < time : step.time <= time));
}

/** How many items there are up to the first for which a condition does not hold that holds for none behind it either. */
export function countWhile<T>(items: readonly T[], holds: (item: T) => boolean): number {
  let low = 0;
  let high = items.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const item = items[middle];
    if (item !== undefined && holds(item)) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The roles that a line states of a half; that it is out, or what is concluded of it, is none. */
export function statedRoles(timeline: PairTimeline, half: string): readonly TimelineEvent[] {
  return track(timeline, half, 'role').filter((s) => !s.concluded && s.value !== 'none' && s.value !== null);
}

/** True if a state may have changed between two instants, as far as the bounds of its steps tell. */
export function mayChange(steps: readonly Instant[], from: number, to: number): boolean {
  const step = steps[countWhile(steps, (s) => s.time <= from)];
  return step !== undefined && step.earliest < to;
}

/** The first from a place on for which a condition holds. */
export function firstFrom<T>(items: readonly T[], place: number, holds: (item: T) => boolean): T | undefined {
  for (let index = place; index < items.length; index += 1) {
    const item = items[index];
    if (item !== undefined && holds(item)) return item;
  }
  return undefined;
}

/** The value that holds at an instant; `null` if it is not known, or nothing is reported. */
export function valueAt(steps: readonly TimelineEvent[], time: number): string | null {
  return stepAt(steps, time)?.value ?? null;
}

/** A spell during which a state had one value; `end` is `null` while the log goes on. */
export interface Spell {
  readonly value: string | null;
  readonly start: TimelineEvent;
  readonly end: TimelineEvent | null;
}

/** The spells of a state with one value; a value that is only restated goes on. */
export function spells(steps: readonly TimelineEvent[], value: string): readonly Spell[] {
  const found: Spell[] = [];
  let start: TimelineEvent | null = null;
  for (const step of steps) {
    if (step.value === value) {
      start = start ?? step;
    } else if (start !== null) {
      found.push({ value, start, end: step });
      start = null;
    }
  }
  return start === null ? found : [...found, { value, start, end: null }];
}
