import type { SourceLine } from '../src/vocabulary.ts';

/** A thing that is looked at, with the lines it rests on. */
export interface Cited {
  readonly title: string;
  readonly lines: readonly SourceLine[];
}

/** Tells the margin what the person looks at: give it to `mouseenter`, `focusin` and `click` of what shows a figure. */
export function citing(title: string, lines: readonly SourceLine[]): (event: Event) => void {
  return (event) => {
    const detail: Cited = { title, lines };
    event.currentTarget?.dispatchEvent(new CustomEvent('cite', { bubbles: true, detail }));
  };
}
