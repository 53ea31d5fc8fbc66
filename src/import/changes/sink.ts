import type {
  Became,
  Changes,
  GaugeSeries,
  Notice,
  RowCounts,
  Setting,
  Stream,
  UnknownWording,
} from '../../vocabulary.ts';
import type { Row } from '../bytes/row.ts';
import type { ClockStep } from '../clock/clock-order.ts';
import type { UnitParts } from '../phrasebook/subjects.ts';
import type { DoubtfulPair } from './doubtful-pairs.ts';
import type { Recorded } from './recorded.ts';

/** What columns of their own say of a message: the state of the condition that it names, its value, and what is said against it. */
export interface Beside {
  readonly state?: string | undefined;
  readonly value?: string | undefined;
  /** When the condition that the message names no longer stood; it stood until then. */
  readonly ended?: number | undefined;
  readonly against?: { readonly says: 'denies' | 'undoes'; readonly text: string } | undefined;
}

/** Where the importers put what they read; it keeps changes only. */
export interface Sink {
  /** A polled value. `parts` says half and role where they stand in columns of their own. */
  reading(at: number, unit: string, parameter: string, value: string, parts?: UnitParts): void;
  /** A value that was polled and not observed, as its quality says. */
  unread(at: number, quality: string): void;
  /** A journalled message, and what columns of their own say of it. */
  entry(at: number, unit: string, message: string, parts?: UnitParts, beside?: Beside): void;
  /** A technician's line: `at` is the stamp, `pair` and `half` what it is about; `null` where no half is named. */
  note(at: number, pair: string, half: string | null, text: string): void;
  /** The row cannot be read. */
  reject(what: string, fix: string, setting?: Setting): void;
  /** The row is known to mean nothing. */
  ignore(): void;
}

/** What a file came to. */
export interface SinkResult {
  readonly rows: RowCounts;
  readonly streams: readonly Stream[];
  readonly changes: Changes;
  readonly gauges: readonly GaugeSeries[];
  readonly unknown: readonly UnknownWording[];
  /** The rows in which those first stand, by their lines; not all where that is too much text. */
  readonly unknownRows: ReadonlyMap<number, string>;
  readonly parameters: readonly Became[];
  readonly units: readonly string[];
  readonly notices: readonly Notice[];
  /** The row that was taken last. */
  readonly last: { readonly line: number; readonly text: string };
}

/** The sink as the driver of a file sees it: rows are taken one by one, and then it is closed, once. */
export interface FileSink {
  /**
   * Takes one row: `read` hands what it says to the sink, and it ends in exactly one count. Where it `isRecorded`, gives what
   * the row said if a row of the same content would say just that again; else `null`.
   */
  take(row: Row, read: (row: Row, sink: Sink) => void, isRecorded: boolean): readonly Recorded[] | null;
  /** What it takes of the budget of memory. */
  taken(): number;
  /** How many rows there were so far. */
  rows(): number;
  /** What the rows so far came to, as if none followed; more may. It must be used before the next is taken. */
  soFar(): ClosedSink;
  /** No row follows: what is taken afterwards is a defect, and throws. */
  close(): ClosedSink;
}

/** What the rows of a file came to, all of them or those so far. */
export interface ClosedSink {
  /** How many readings were out of order: earlier than one of their parameter that stands before them. */
  readonly outOfOrder: number;
  /** Names that were taken for pairs, and cannot be any. */
  readonly doubtful: readonly DoubtfulPair[];
  /** Where the clock of the file was set back. */
  readonly steps: readonly ClockStep[];
  result(file: string): SinkResult;
}
