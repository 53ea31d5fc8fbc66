import type { Instant, Interval, SourceLine } from '../src/vocabulary.ts';

/** A thing that is looked at, with the lines it rests on. */
export interface Cited {
  readonly title: string;
  readonly lines: readonly SourceLine[];
}

/** What a press pinned; `isByKey` where a key was pressed, so that the focus goes along. */
export interface Pressed extends Cited {
  readonly isByKey: boolean;
}

/** Tells the margin what the person looks at: give it to `mouseenter` and `focusin` of what shows a figure. */
export function citing(title: string, lines: readonly SourceLine[]): (event: Event) => void {
  return ({ currentTarget }) => {
    if (currentTarget !== null) cite(currentTarget, title, lines);
  };
}

/** Tells the margin that what it shows is gone: another thing stands in its place. */
export function citeNothing(from: EventTarget): void {
  from.dispatchEvent(new CustomEvent('cite', { bubbles: true, detail: null }));
}

/** Tells the margin what a person looks at, from the element that shows it. */
export function cite(from: EventTarget, title: string, lines: readonly SourceLine[]): void {
  const detail: Cited = { title, lines };
  from.dispatchEvent(new CustomEvent('cite', { bubbles: true, detail }));
}

/** Pins the evidence of an element that was pressed. */
export function pin(from: EventTarget, detail: Pressed): void {
  from.dispatchEvent(new CustomEvent('pin', { bubbles: true, detail }));
}

/** Lets go of what is pinned. */
export function unpin(from: EventTarget): void {
  from.dispatchEvent(new CustomEvent('unpin', { bubbles: true }));
}

/** The same, and marks the instant on the staff; give `leaving` to `mouseleave` and `focusout` with it. */
export function citingAt(
  title: string,
  lines: readonly SourceLine[],
  { time, earliest }: Instant,
): (event: Event) => void {
  return ({ currentTarget }) => {
    if (currentTarget === null) return;
    cite(currentTarget, title, lines);
    const detail: Instant = { time, earliest };
    currentTarget.dispatchEvent(new CustomEvent('at', { bubbles: true, detail }));
  };
}

/** Takes the mark of an instant off the staff. */
export function leaving({ currentTarget }: Event): void {
  currentTarget?.dispatchEvent(new CustomEvent('at', { bubbles: true, detail: null }));
}

/** True for what happened, or may have, where the staff is pointed at. */
export function isNear({ time, earliest }: Instant, near: Interval | null): boolean {
  return near !== null && time >= near.from && earliest <= near.to;
}
