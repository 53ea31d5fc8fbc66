import type { Row } from '../bytes/row.ts';
import type { Sink } from '../changes/sink.ts';
import type { TimeReader } from '../clock/time-reader.ts';
import type { ColumnKey } from '../phrasebook/column-keys.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import type { Head } from './head.ts';

/** Whether a layout fits, and why or why not. */
export type Recognition =
  /** `isLast`: only where no other layout fits. */
  | { readonly fits: true; readonly because: string; readonly isLast?: boolean }
  | { readonly fits: false; readonly because: string };

/** The columns of a table besides those that say a time and a unit, which every table may have. */
export interface TableColumns {
  /** A table without them is none of this layout. */
  readonly required: readonly ColumnKey[];
  /** Read where they are there. */
  readonly optional: readonly ColumnKey[];
  /** Known by their spelling, and passed over. */
  readonly passedOver: readonly ColumnKey[];
  /** What all other columns are; `tags`: each names a unit and a parameter. */
  readonly others: 'unknown' | 'parameters' | 'tags';
}

/** The keys of a rule for files that only some layouts take. */
export type RuleKey = 'columns' | 'header' | 'line' | 'record';

interface Layout {
  /** The name of its file, and of the layout in a phrasebook. */
  readonly id: string;
  /** Its name for people, and one line of what such a file looks like. */
  readonly title: string;
  readonly summary: string;
  /** The keys of a rule for files that have an effect in this layout; `unit`, `path` and `time` have one in any. */
  readonly ruleKeys: readonly RuleKey[];
  /** Whether it can read a file that begins so, and why, or what is missing. */
  recognise(head: Head, phrasebook: Phrasebook): Recognition;
  /** The text of a row that begins with its date, by which the order of day and month is told. */
  dateText(head: Head, phrasebook: Phrasebook): (row: Row) => string;
  /** Takes one row at a time and hands plain values to the sink; every row ends in exactly one count. */
  open(head: Head, phrasebook: Phrasebook, times: TimeReader): (row: Row, sink: Sink) => void;
}

/** A layout of rows with columns. */
export interface TableImporter extends Layout {
  readonly shape: 'table';
  readonly columns: TableColumns;
  /**
   * The columns of polled values, in the order in which `open` hands them to the sink; none where a row is one entry. By
   * them the row cache takes a row whose other bytes were read before.
   */
  values(head: Head, phrasebook: Phrasebook): readonly number[];
}

/** A layout of lines of text. */
export interface TextImporter extends Layout {
  readonly shape: 'text';
}

/** What a layout reads, and all that is known of it. */
export type Importer = TableImporter | TextImporter;
