import type { Random } from '../../samples/random.ts';

/** One promise, tried in one setting. */
export interface Trial {
  /** What the losses, or times, were like: `bursty losses, 20 pairs, 2 years`. */
  readonly setting: string;
  /** What is promised of the share: a range, since exact limits of counts promise "at most" or "at least". */
  readonly promised: { readonly low: number; readonly high: number };
  /** How often it was so, of how many simulated cases. */
  readonly hits: number;
  readonly cases: number;
  /** Why the promise cannot be held here, where it is known not to be; said in the table instead of `off`. */
  readonly because?: string;
}

/** A method of the program held against what it promises, by simulation: one file a study, one line in `studies.ts`. */
export interface Study {
  /** The method, and what share is counted: `stands out: sound fleets with a pair that does`. */
  readonly name: string;
  /** `scale` 1 is the usual length of the run; the cases of every trial grow with it. */
  run(random: Random, scale: number): readonly Trial[];
}
