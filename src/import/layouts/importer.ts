import type { Recognition, Row } from '../bytes/row.ts';
import type { Sink } from '../changes/sink.ts';
import type { TimeReader } from '../clock/time-reader.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import type { Head } from './head.ts';

/** What a layout reads: rows of a table, or lines of text. */
export interface Importer {
  readonly id: string;
  readonly title: string;
  readonly shape: 'table' | 'text';
  /** Whether it can read a file that begins so, and why, or what is missing. */
  recognise(head: Head, phrasebook: Phrasebook): Recognition;
  /**
   * The columns of polled values, in the order in which `open` hands them to the sink; none where a row is one entry. With it
   * a row whose other bytes were seen before need not be read as text.
   */
  readonly values?: (head: Head) => readonly number[];
  /** Takes one row at a time and hands plain values to the sink; every row ends in exactly one count. */
  open(head: Head, phrasebook: Phrasebook, times: TimeReader): (row: Row, sink: Sink) => void;
}
