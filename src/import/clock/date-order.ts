import type { DateOrder } from './stamp.ts';

/** What the dates of a file say about their order. */
export interface OrderEvidence {
  add(text: string, line: number): void;
  /** True if some date could be read both ways and none settled it. */
  isOpen(): boolean;
  settled(): { readonly order: DateOrder; readonly line: number; readonly text: string } | undefined;
  /** The first date that does not settle it. */
  example():
    | {
        readonly text: string;
        readonly line: number;
        readonly first: number;
        readonly second: number;
        readonly year: string;
      }
    | undefined;
}

const numbered = /^\s*(\d{1,2})[/.-](\d{1,2})[/.-](\d{4}|\d{2})\b/;

/** A number past 12 is a day: one such date settles the order of the whole file. */
export function orderEvidence(): OrderEvidence {
  let settled: ReturnType<OrderEvidence['settled']>;
  let example: ReturnType<OrderEvidence['example']>;
  let last = '';
  return {
    add(text, line) {
      // Most rows repeat the date of the row before.
      if (settled !== undefined || (last !== '' && text.startsWith(last))) return;
      const found = numbered.exec(text);
      if (found === null) return;
      last = found[0];
      const [first, second] = [Number(found[1]), Number(found[2])];
      if (first > 12 && second <= 12) settled = { order: 'day-first', line, text: found[0].trim() };
      else if (second > 12 && first <= 12) settled = { order: 'month-first', line, text: found[0].trim() };
      else example = example ?? { text: found[0].trim(), line, first, second, year: found[3] ?? '' };
    },
    isOpen: () => settled === undefined && example !== undefined && example.first !== example.second,
    settled: () => settled,
    example: () => example,
  };
}
