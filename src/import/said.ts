import type { Meaning } from './entries.ts';
import type { Parameter } from './parameters.ts';
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

export const silent: Said = { kind: 'silent' };
export const meaningless: Said = { kind: 'meaningless' };
