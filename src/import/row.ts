/** One row of a file. The object is used again for the next row: take what you need. */
export interface Row {
  /** The line it begins on, counted from 1. */
  readonly line: number;
  /** No line end follows it: its last cell may be cut off. */
  readonly isCut: boolean;
  /** A column's text; empty for a column that is not there. */
  cell(column: number): string;
  /** How many columns it has. */
  width(): number;
  /** The row as read. */
  text(): string;
}

/** Whether a layout fits, and why or why not. */
export type Recognition =
  | { readonly fits: true; readonly because: string }
  | { readonly fits: false; readonly because: string };
