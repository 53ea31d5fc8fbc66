import type {
  Became,
  Change,
  GaugeSeries,
  Notice,
  RowCounts,
  Stream,
  UnknownWording,
} from '../../vocabulary.ts';
import type { Row } from '../bytes/row.ts';
import type { ClockStep } from '../clock/clock-order.ts';
import type { UnitParts } from '../phrasebook/subjects.ts';
import type { Said, SaidRun } from './said.ts';

/** Where the importers put what they read; it keeps changes only. */
export interface Sink {
  /** A polled value. `parts` says half and role where they stand in columns of their own. */
  reading(at: number, unit: string, parameter: string, value: string, parts?: UnitParts): void;
  /** A journalled message. */
  entry(at: number, unit: string, message: string, parts?: UnitParts): void;
  /** A technician's line: `at` is the stamp, `pair` and `half` what it is about; `null` where no half is named. */
  note(at: number, pair: string, half: string | null, text: string): void;
  /** The row can not be read. */
  reject(what: string, fix: string): void;
  /** The row is known to mean nothing. */
  ignore(): void;
}

/** What a file came to. */
export interface SinkResult {
  readonly rows: RowCounts;
  readonly streams: readonly Stream[];
  readonly changes: readonly Change[];
  readonly gauges: readonly GaugeSeries[];
  readonly unknown: readonly UnknownWording[];
  readonly parameters: readonly Became[];
  readonly units: readonly string[];
  readonly notices: readonly Notice[];
  /** The row that was taken last. */
  readonly last: { readonly line: number; readonly text: string };
}

/** Which rows of a run came, where it begins or would, and how its rows are found, there or where it stood before. */
export interface RunPlace {
  first: number;
  /** The row behind the last. */
  end: number;
  from: number;
  line: number;
  rowIn(run: SaidRun, row: number): Row;
}

/** The sink as the driver of a file sees it. */
export interface FileSink extends Sink {
  /** Takes up the next row; where it `isLearnt`, `said` can be asked for when it has ended. */
  begin(row: Row, isLearnt?: boolean): void;
  /** What the row said, if a row of the same content would say just that again; else `null`. */
  said(): readonly Said[] | null;
  /** Takes a row that says again what one said before, at another instant: `numbers` are those of its gauges. */
  again(row: Row, at: number, said: readonly Said[], numbers: ArrayLike<number>): void;
  /**
   * Takes rows of a run, under one stamp, that say again what is so already. `false`, and nothing is taken, where that is not
   * all there is to them.
   */
  unchanged(run: SaidRun, at: number, place: RunPlace): boolean;
  /** The rows that `place` can find are about to go. */
  settle(): void;
  /** Ends the row in exactly one count. */
  finish(): void;
  /** How many changes it holds. */
  changes(): number;
  /** How many rows there were so far. */
  rows(): number;
  /** How many readings came behind an earlier one of their parameter. */
  behind(): number;
  /** Where the clock of the file was set back; asked once, at the end. */
  steps(): readonly ClockStep[];
  result(file: string): SinkResult;
}
