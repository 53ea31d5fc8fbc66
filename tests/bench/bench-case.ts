import { join } from 'node:path';

/** Where inputs and outputs of the benches lie; inputs are kept from run to run. */
export const folder = join('out', 'bench');

/** The command, as a person starts it. */
export const command: readonly string[] = [process.execPath, join('dist', 'steadypair.mjs')];

/** What one program took for one job. */
export interface Row {
  readonly job: string;
  readonly program: string;
  readonly seconds: number;
  /** How much it went through in this time; `null` where it goes through nothing. */
  readonly amount: { readonly count: number; readonly unit: 'MB' | 'pairs' } | null;
  /** Its largest resident set in megabytes; `null` where nothing measures it. */
  readonly megabytes: number | null;
  /** The same or the least of the job done by something else in this run, and what did it; `null` where nothing does. */
  readonly yardstick: { readonly name: string; readonly seconds: number } | null;
}

/** What a bench found. */
export interface Found {
  readonly rows: readonly Row[];
  /** What else there is to say, a line each. */
  readonly notes: readonly string[];
  /** Whether programs that do the same job found the same; `null` where none does. */
  readonly agrees: boolean | null;
}

/** One thing that is measured. */
export interface Bench {
  readonly id: string;
  /** Makes an input of about so many megabytes, unless it is there, and measures. */
  measure(megabytes: number): Promise<Found>;
}
