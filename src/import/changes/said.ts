import type { Meaning } from '../phrasebook/entries.ts';
import type { Parameter, Together } from './parameters.ts';
import type { Unit } from './units.ts';

/** A polled value as it was read. */
export interface SaidReading {
  readonly kind: 'reading';
  readonly unit: Unit;
  readonly parameter: Parameter;
  readonly name: string;
  readonly value: string;
}

/** What one cell of a row said: a reading, nothing, or what is known to mean nothing; or what a journal says in a row. */
export type Said =
  | SaidReading
  | { readonly kind: 'silent' }
  | { readonly kind: 'meaningless' }
  | { readonly kind: 'entry'; readonly unit: Unit; readonly message: string; readonly found: Meaning };

/** What a row says that holds readings alone. */
export interface SaidRow {
  readonly readings: readonly SaidReading[];
}

/** Rows that come again and again one after the other. */
export interface SaidRun {
  readonly rows: readonly SaidRow[];
  /** For the sink: what it keeps of all of them at once, how often it took all of them since, and where it did last. */
  together: RunTogether | null;
  calm: number;
  from: number;
  line: number;
}

/** Rows whose parameters were read together, and how often since they were last noted unit by unit. */
export interface RunTogether extends Together {
  readonly units: readonly UnitReadings[];
  /** How long after the time before they came. */
  span: number;
  times: number;
  /** Longer spans may be gaps of one of the units. */
  gapsFrom: number;
  /** While this is the sink's, nothing else was read of its units. */
  round: number;
}

/** Readings of one unit that come one after the other: how many, and in which rows the first and the last stand. */
export interface UnitReadings {
  readonly unit: Unit;
  readonly readings: number;
  readonly firstRow: number;
  readonly lastRow: number;
}

export const silent: Said = { kind: 'silent' };
export const meaningless: Said = { kind: 'meaningless' };
