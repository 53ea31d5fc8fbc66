import type { Zone } from './zones.ts';

export type DateOrder = 'day-first' | 'month-first';

/** What a stamp says, before a zone is applied. */
export interface Stamp {
  /** Milliseconds of the printed clock, counted as if it were UTC; for an instant its UTC. */
  readonly clock: number;
  /** True if the stamp says which instant it is: an offset, `Z`, or an epoch count. */
  readonly isInstant: boolean;
  readonly hasDecimals: boolean;
  /** Where the stamp ends in the text. */
  readonly end: number;
  /** The zone of the IANA data that the stamp itself names. */
  readonly zone?: string;
}

/** What a stamp may leave open. */
export interface StampOptions {
  /** Undefined until it is known: then a date such as 03/04/2026 cannot be read. */
  readonly order: DateOrder | undefined;
  /** For stamps without a year. */
  readonly year: number | undefined;
  /** Milliseconds UTC of the midnight that a clock without a date belongs to. */
  readonly day: number | undefined;
  /** The zone of a name, or `null` where it is none; looked up again each time where this is not given. */
  readonly zoneNamed?: (name: string) => Zone | null;
}

export type StampFailure = 'no-date' | 'out-of-range' | 'order' | 'year' | 'day' | 'zone';
