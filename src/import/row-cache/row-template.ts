import type { GaugeReader } from '../changes/gauges.ts';
import type { SharedTime } from '../changes/parameters.ts';
import type { Recorded, RecordedReading } from '../changes/recorded.ts';
import type { Unit } from '../changes/units.ts';
import type { Literal } from './literal.ts';

/** A row that was read before: its bytes without the stamp and without the numbers of gauges, and what was found in it. */
export interface RowTemplate {
  readonly recorded: readonly Recorded[];
  /** Before the stamp; then from the stamp to the first gauge, between gauges, and from the last one to the line end. */
  readonly before: Literal;
  readonly parts: readonly Literal[];
  /** Its readings, where it holds nothing else: then its bytes under another stamp say all there is. */
  readonly readings: readonly RecordedReading[];
  /** How many of these are of gauges: they are no changes, whatever their numbers. */
  readonly gauges: number;
  /** The row that followed it last. */
  next: RowTemplate | null;
  /** The row that came in its place last, or in whose place it came: a state that changed changes back, as a rule. */
  instead: RowTemplate | null;
  /** The batch it was put in last, and its place there: another row may have taken that place since. */
  batch: Batch | null;
  place: number;
}

/** Rows that followed each other under one stamp: their bytes, with the stamp that they are expected under next. */
export interface Batch {
  readonly rows: RowTemplate[];
  /** With some to spare. */
  bytes: Uint8Array;
  view: DataView;
  /** Where each row begins, and where the last ends. */
  readonly edges: Int32Array;
  /** Where the stamp of each row stands. */
  readonly stamps: Int32Array;
  readonly stampLength: number;
  /** The gauges of each row, in their order. */
  readonly gauges: (readonly BatchGauge[])[];
  /** Once it came unchanged a few times: what all its readings share. */
  time: BatchTime | null;
  /** How many times it came whole and unchanged; where it changes half of the last few remain. */
  timesUnchanged: number;
  /** Where it stood last: the place in its chunk, and the line. */
  from: number;
  line: number;
}

/** A gauge of a row of a batch, with the number that its bytes show. */
export interface BatchGauge {
  readonly reader: GaugeReader;
  number: number;
  /** Of the times that its batch came and is not noted: how often its own numbers are noted already. */
  timesNoted: number;
}

/** The instant that the parameters of a batch share, and how often the batch came since it was noted unit by unit. */
export interface BatchTime extends SharedTime {
  readonly units: readonly UnitReadings[];
  /** All gauges of its rows, and in how many rows they are. */
  readonly gauges: readonly BatchGauge[];
  readonly gaugeRows: number;
  /** Where the five minutes end in which it came last, if it has gauges: what is pending came within them. */
  binEnd: number;
  /** How long after the time before it came. */
  span: number;
  timesPending: number;
  /** Longer spans may be gaps of one of the units. */
  gapsFrom: number;
  /** The cycle in which it was noted last: while that goes on, nothing else was read of its units. */
  cycle: number;
}

/** Readings of one unit that follow each other: how many, and in which rows the first and the last stand. */
export interface UnitReadings {
  readonly unit: Unit;
  readonly readings: number;
  readonly firstRow: number;
  readonly lastRow: number;
}

/** Where the stamp, the polled values and the message stand; the stamp may be a date and a clock side by side. */
export interface ColumnPlaces {
  readonly stampFirst: number;
  readonly stampLast: number;
  readonly values: readonly number[];
  /** -1 where rows are no entries. */
  readonly message: number;
}

/** For each column up to the last of polled values, 1 if it is one. */
export function valueMarks({ values }: ColumnPlaces): Uint8Array {
  const marks = new Uint8Array(values.reduce((most, column) => Math.max(most, column + 1), 0));
  for (const column of values) marks[column] = 1;
  return marks;
}
