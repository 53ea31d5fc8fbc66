import type { Mark } from '../src/pipeline.ts';
import type { Interval } from '../src/vocabulary.ts';
import type { StaffAction } from './staff-keys.ts';
import { nextMark } from './staff-marks.ts';
import { broughtInto, panned, windowOf, zoomed } from './staff-window.ts';

/** What a person moved on the staff; instants in milliseconds UTC. */
export interface StaffPosition {
  readonly shown: Interval;
  readonly marked: Interval | null;
  readonly cursor: number | null;
  /** Where the cursor was when it began to mark. */
  readonly anchor: number | null;
}

/** What the staff is of: the whole log, the span it begins with, what happened. */
export interface StaffGround {
  readonly whole: Interval;
  readonly home: Interval;
  readonly marks: readonly Mark[];
}

/** Where the staff stands after an action. */
export function afterAction(before: StaffPosition, action: StaffAction, ground: StaffGround): StaffPosition {
  const { shown, marked, cursor } = before;
  const { whole, home, marks } = ground;
  const seen = (window: Interval): StaffPosition => ({ ...before, shown: window });
  switch (action.kind) {
    case 'zoom': {
      const at = cursor === null ? 0.5 : (cursor - shown.from) / Math.max(1, shown.to - shown.from);
      return seen(zoomed(shown, action.by, at < 0 || at > 1 ? 0.5 : at, whole));
    }
    case 'pan':
      return seen(panned(shown, action.by, whole));
    case 'cursor':
      return withCursor(before, action.by, action.isMarking, whole);
    case 'next-mark': {
      const next = nextMark(marks, cursor ?? middleOf(shown), action.step);
      if (next === null) return before;
      return { ...before, cursor: next, anchor: null, shown: broughtInto(shown, next, whole) };
    }
    case 'fit-swap':
      return { ...seen(home), marked: null };
    case 'fit-log':
      return { ...seen({ from: whole.from, to: whole.to }), marked: null };
    case 'fit-span':
      return marked === null
        ? before
        : { ...seen(windowOf(marked.from, marked.to, whole)), marked: null, anchor: null };
    case 'let-go':
      return marked === null
        ? { ...before, cursor: null, anchor: null }
        : { ...before, marked: null, anchor: null };
    case 'lines':
      return before;
  }
}

function withCursor(before: StaffPosition, by: number, isMarking: boolean, whole: Interval): StaffPosition {
  const { shown } = before;
  const from = before.cursor ?? middleOf(shown);
  const moved = Math.round(from + by * (shown.to - shown.from));
  const cursor = Math.max(whole.from, Math.min(whole.to, moved));
  const next = { ...before, cursor, shown: broughtInto(shown, cursor, whole) };
  if (!isMarking) return { ...next, anchor: null };
  const anchor = before.anchor ?? from;
  return { ...next, anchor, marked: { from: Math.min(anchor, cursor), to: Math.max(anchor, cursor) } };
}

function middleOf({ from, to }: Interval): number {
  return Math.round((from + to) / 2);
}
