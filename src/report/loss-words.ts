import { type LossRatio, type RateChange, sayChance, sayDuration } from '../vocabulary.ts';
import { sayEstimate, sayMonth } from './fleet-words.ts';

const yearSeconds = 365.25 * 86_400;

/** A change of rate with its figures: `from 1.9 to 17.2 bouts per year about Feb 2026 (p = 0.002)`. */
export function sayChanged({ time, before, after, p }: RateChange): string {
  const rate = ({ bouts, observedSeconds }: RateChange['before']): string =>
    observedSeconds > 0 ? ((bouts * yearSeconds) / observedSeconds).toFixed(1) : 'none';
  return `from ${rate(before)} to ${rate(after)} bouts per year about ${sayMonth(time)} (${sayChance(p)})`;
}

/** Whether a rate rose at its change. */
export function isRise({ before, after }: RateChange): boolean {
  return after.bouts * before.observedSeconds > before.bouts * after.observedSeconds;
}

/** How many losses or bouts since a change and how many before: `16 losses in 270 days since, 6 in the 460 days before`. */
export function sayChange({ before, after }: RateChange, what: 'losses' | 'bouts'): string {
  const one = what === 'losses' ? 'one loss' : 'one bout';
  const since = after.bouts === 0 ? 'none' : after.bouts === 1 ? one : `${after.bouts} ${what}`;
  const earlier = before.bouts === 0 ? 'none' : String(before.bouts);
  return `${since} in ${sayDuration(after.observedSeconds)} since, ${earlier} in the ${sayDuration(before.observedSeconds)} before`;
}

/** A ratio of two rates with its limits: `1.4 (1.2 to 1.8), p = 0.0007`; how it was compared stands beside it. */
export function sayRatio({ ratio, p }: LossRatio): string {
  const said = ratio.value === null ? 'without limit' : sayEstimate(ratio);
  return `${said}, ${sayChance(p)}`;
}

/** Whether two groups differ: `differ`, `no difference without OUTFALL`, `no difference beyond chance`. */
export function sayDifference({ differs, byOnePair }: LossRatio): string {
  if (differs) return 'differ';
  return byOnePair === null ? 'no difference beyond chance' : `no difference without ${byOnePair}`;
}

/** With which pairs two groups were compared. */
export function sayCompared({ pairsInBoth }: LossRatio): string {
  if (pairsInBoth === null) return 'all pairs of each';
  return pairsInBoth === 1 ? 'one pair that had both' : `${pairsInBoth} pairs that had both`;
}

/** Why a group has no limits. */
export const struckWords = 'several pairs lost their partners at once';
