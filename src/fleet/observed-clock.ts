import { total } from '../timeline/coverage.ts';
import type { ComparedPair, Interval } from '../vocabulary.ts';

/** How much of some intervals lies before an instant, in milliseconds. */
export function observedBefore(observed: readonly Interval[], time: number): number {
  return observed.reduce((sum, { from, to }) => sum + Math.max(0, Math.min(to, time) - from), 0);
}

/**
 * The bouts of a pair on the clock of its observed time, which stands still while the pair is not observed, and where that
 * clock ends; in milliseconds. A bout is at its first loss.
 */
export function boutClock({ bouts, observed }: Pick<ComparedPair, 'bouts' | 'observed'>): {
  readonly times: readonly number[];
  readonly end: number;
} {
  return { times: bouts.map((bout) => observedBefore(observed, bout.time)), end: total(observed) };
}
