import type { DateOrder } from './stamp.ts';

/** What the dates of a file say about their order. */
export interface OrderEvidence {
  add(text: string, line: number): void;
  /** True if some date could be read both ways and none settled it. */
  isOpen(): boolean;
  /** True if a later date may settle it: there are dates of two numbers and a year, if only such as 03/03. */
  goesOn(): boolean;
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

const numbered = /(?:^|[^\d./-])(\d{1,2})([/.-]) ?(\d{1,2})\2 ?(\d{4}|\d{2})(?![\d/-]|\.\d)/;
/** What may stand before the date of a stamp: nothing, a mark, the key of a field. */
const beforeStamp = /(?:^(?:<\d{1,3}>)?[\s[("'{]*|\b(?:time|timestamp|ts|when|date)"?\s*[=:]\s*["']?)$/i;
/** A word, as the name of a day or a severity, or a clock. */
const wordBefore = /^\s*(?:[[(]?\p{L}+[\])]?[.,:]?|\d{1,2}:\d{2}(?::\d{2})?,?)\s+$/u;
/** In a line of text the stamp stands near its start: what comes later is what it tells of. */
const startOfLine = 120;

function isOfStamp(text: string, at: number, year: string): boolean {
  const before = text.slice(0, at);
  // "Release 6.4.10" is no date.
  return beforeStamp.test(before) || (year.length === 4 && wordBefore.test(before));
}

/** A number past 12 is a day: one such date settles the order of the whole file, wherever it stands. */
export function orderEvidence(): OrderEvidence {
  let settled: ReturnType<OrderEvidence['settled']>;
  let example: ReturnType<OrderEvidence['example']>;
  let last = '';
  return {
    add(text, line) {
      // Most rows repeat the date of the row before.
      if (settled !== undefined || (last !== '' && text.startsWith(last))) return;
      const found = numbered.exec(text.slice(0, startOfLine));
      if (found === null) return;
      const date = found[0].replace(/^\D/, '');
      const end = found.index + found[0].length;
      if (!isOfStamp(text, end - date.length, found[4] ?? '')) return;
      last = text.slice(0, end);
      const [first, second] = [Number(found[1]), Number(found[3])];
      if (first > 12 && second <= 12) settled = { order: 'day-first', line, text: date };
      else if (second > 12 && first <= 12) settled = { order: 'month-first', line, text: date };
      // 03/03 is one day either way.
      else if (first !== second) example ??= { text: date, line, first, second, year: found[4] ?? '' };
    },
    isOpen: () => settled === undefined && example !== undefined,
    goesOn: () => settled === undefined && last !== '',
    settled: () => settled,
    example: () => example,
  };
}
