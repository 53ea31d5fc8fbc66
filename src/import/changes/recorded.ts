import type { Meaning } from '../phrasebook/meanings.ts';
import type { Condition } from './conditions.ts';
import type { Parameter } from './parameters.ts';
import type { Quality } from './qualities.ts';
import type { Unit } from './units.ts';

/** A polled value as it was read. */
export interface RecordedReading {
  readonly kind: 'reading';
  readonly unit: Unit;
  readonly parameter: Parameter;
  readonly name: string;
  readonly value: string;
}

/** An entry as it was read. */
export interface RecordedEntry {
  readonly kind: 'entry';
  readonly unit: Unit;
  readonly message: string;
  readonly condition: Condition | null;
  readonly found: Meaning;
  /** False only if the same is found in every row that differs from this one in the digits of its message alone. */
  readonly digitsMatter: boolean;
}

/**
 * What was found in one cell of a row: a reading, nothing, or what is known to mean nothing; or the entry that the row of a
 * journal is. It is recorded so that a row of the same content need not be read as text.
 */
export type Recorded =
  | RecordedReading
  | { readonly kind: 'empty' }
  | { readonly kind: 'ignored' }
  /** A value that was not observed, by its quality. */
  | { readonly kind: 'unread'; readonly quality: Quality }
  | RecordedEntry;

export const emptyCell: Recorded = { kind: 'empty' };
export const ignoredCell: Recorded = { kind: 'ignored' };
