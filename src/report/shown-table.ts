import type { SourceLine } from '../vocabulary.ts';

/** One cell as a person reads it. */
export interface ShownCell {
  readonly text: string;
  readonly isAbnormal: boolean;
}

/** One row with the log lines it rests on: some of them, where there are many. */
export interface ShownRow {
  readonly cells: readonly ShownCell[];
  readonly lines: readonly SourceLine[];
}

/** A table in words, the same in every output: the first column names the row. */
export interface ShownTable {
  readonly columns: readonly { readonly title: string; readonly isNumber: boolean }[];
  readonly rows: readonly ShownRow[];
  /** What was left out, and where it is; empty if nothing. */
  readonly note: string;
}

/** A cell as it should be. */
export function plain(text: string | number): ShownCell {
  return { text: String(text), isAbnormal: false };
}

/** A cell to be seen: its word says what is wrong. */
export function abnormal(text: string): ShownCell {
  return { text, isAbnormal: true };
}

/** Columns by their titles; one that ends in `#` holds numbers. */
export function columns(...titles: readonly string[]): ShownTable['columns'] {
  return titles.map((title) => ({ title: title.replace(/#$/, ''), isNumber: title.endsWith('#') }));
}
