import type { Head } from './head.ts';
import type { Phrasebook } from './phrasebook.ts';
import type { Sink } from './sink.ts';
import type { TimeReader } from './time-reader.ts';

/** One row of a file. The object is used again for the next row: take what you need. */
export interface Row {
  /** The line it begins on, counted from 1. */
  readonly line: number;
  /** A column's text; empty for a column that is not there. */
  cell(column: number): string;
  /** How many columns it has. */
  width(): number;
  /** The row as read. */
  text(): string;
}

export type Recognition =
  | { readonly fits: true; readonly because: string }
  | { readonly fits: false; readonly because: string };

/** What a layout reads: rows of a table, or lines of text. */
export interface Importer {
  readonly id: string;
  readonly title: string;
  readonly shape: 'table' | 'text';
  /** Whether it can read a file that begins so, and why, or what is missing. */
  recognise(head: Head, phrasebook: Phrasebook): Recognition;
  /** Takes one row at a time and hands plain values to the sink; every row ends in exactly one count. */
  open(head: Head, phrasebook: Phrasebook, times: TimeReader): (row: Row, sink: Sink) => void;
}
