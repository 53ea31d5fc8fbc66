import type { SourceLine } from '../src/vocabulary.ts';

/** A thing that is looked at, with the lines it rests on. */
export interface Cited {
  readonly title: string;
  readonly lines: readonly SourceLine[];
}

/** Tells the margin what the person looks at: give it to `mouseenter`, `focusin` and `click` of what shows a figure. */
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
