import type { RowText } from '../../change-columns.ts';

/**
 * The last row that something was read in, kept without its text where making a string of every row would cost too much:
 * then `bytes` holds it from `from` to `to`, until the next chunk of the file takes their place.
 */
export interface KeptRow {
  text: string;
  bytes: RowBytes | null;
  from: number;
  to: number;
}

/** Rows that are still bytes. */
export interface RowBytes {
  text(from: number, to: number): string;
}

/** Nothing yet. */
export function keptRow(): KeptRow {
  return { text: '', bytes: null, from: 0, to: 0 };
}

/** The text of a kept row. */
export function keptText({ text, bytes, from, to }: KeptRow): string {
  return bytes === null ? text : bytes.text(from, to);
}

/** Keeps the row as text. */
export function keepText(row: Pick<Row, 'text'>, kept: KeptRow): void {
  kept.text = row.text();
  kept.bytes = null;
}

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
  /** The same as a string of its own, to be kept: it holds no larger text in memory. */
  ownText(): string;
  /** Puts the row as read where it is kept. */
  putText(into: RowText): void;
  /** Keeps the row, so that its text can be asked for later. */
  keep(kept: KeptRow): void;
}

/** A row without its line end. Without a pattern, which would take time by the square of the returns in the row. */
export function withoutLineEnd(text: string): string {
  let end = text.length;
  while (end > 0 && (text.charCodeAt(end - 1) === 10 || text.charCodeAt(end - 1) === 13)) end -= 1;
  return text.slice(0, end);
}
