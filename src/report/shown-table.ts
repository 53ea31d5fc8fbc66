import type { Instant, Severity, SourceLine } from '../vocabulary.ts';

/** One cell as a person reads it; its severity is `null` where it is as it should be. */
export interface ShownCell {
  readonly text: string;
  readonly severity: Exclude<Severity, 'info'> | null;
  /** The pair that the cell names, where it is one. */
  readonly pair?: string;
}

/** One row with the log lines it rests on: some of them, where there are many. */
export interface ShownRow {
  readonly cells: readonly ShownCell[];
  readonly lines: readonly SourceLine[];
  /** When it happened, where the row is of one instant. */
  readonly at?: Instant;
}

/** A table in words, the same in every output: the first column names the row. */
export interface ShownTable {
  readonly columns: readonly { readonly title: string; readonly isNumber: boolean }[];
  /** All of them, the worst first. */
  readonly rows: readonly ShownRow[];
  /** The file with the same figures, for an output that does not show all rows. */
  readonly file: string;
  /** What was left out, and where it is; empty if nothing. */
  readonly note: string;
}

/** Rows that a table shows at first, and on paper. */
export const mostRows = 100;

/** The table as paper holds it: its first rows, and where the others are. */
export function onPaper(table: ShownTable): ShownTable {
  const left = table.rows.length - mostRows;
  if (left <= 0) return table;
  return {
    ...table,
    rows: table.rows.slice(0, mostRows),
    note: `${left} further rows are in ${table.file}.`,
  };
}

/** A cell as it should be. */
export function plain(text: string | number): ShownCell {
  return { text: String(text), severity: null };
}

/** The name of a pair. */
export function pairCell(pair: string): ShownCell {
  return { text: pair, severity: null, pair };
}

/** A cell to be seen: its word says what is wrong. */
export function abnormal(text: string, severity: ShownCell['severity'] = 'critical'): ShownCell {
  return { text, severity };
}

/** The class that colours a cell: rust where it is critical, ochre where it is a warning. Empty: no colour. */
export function classOf({ severity }: ShownCell): 'fail' | 'inconclusive' | '' {
  if (severity === null) return '';
  return severity === 'critical' ? 'fail' : 'inconclusive';
}

/** Columns by their titles; one that ends in `#` holds numbers. */
export function columns(...titles: readonly string[]): ShownTable['columns'] {
  return titles.map((title) => ({ title: title.replace(/#$/, ''), isNumber: title.endsWith('#') }));
}
