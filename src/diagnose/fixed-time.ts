import { decibans, evidenceBound } from '../statistics/evidence-bound.ts';
import { widestSpread } from '../statistics/exponential-spread.ts';
import { medianOffset } from '../statistics/median-offset.ts';
import { type Duration, sayDuration } from '../vocabulary.ts';
import { capped } from './cause.ts';
import type { DiagnoseLimits } from './limits.ts';

/** Durations that may all be the same. */
export interface FixedTime {
  readonly median: Duration;
  /** Half of the durations lie within so many seconds of the median, no matter what their bounds leave open. */
  readonly spreadSeconds: number;
  readonly count: number;
  /** They surely scatter little enough to be called the same, they surely do not, or their bounds leave it open. */
  readonly verdict: 'fixed' | 'scattered' | 'too-coarse';
  readonly decibans: number;
}

/**
 * Whether durations come at a fixed time: too alike for an exponential, whose evidence bound is the weight, and scattered by no
 * more than a share of their median, since many things are more alike than an exponential. Both are decided on the bounds, at
 * their worst for the claim: stamps of a second say nothing of times of a second. One of five may be of another kind: the weight is
 * that of the rest, the chance of it multiplied by the ways to leave so many out. Only the latest are looked at; `null` with too few.
 */
export function fixedTimeOf(durations: readonly Duration[], limits: DiagnoseLimits): FixedTime | null {
  const latest = durations.slice(-limits.patternMost);
  const middle = medianOf(latest);
  if (latest.length < limits.patternCount || middle === null) return null;
  const { low, high } = middle;
  const farthest = medianOffset(latest.map((d) => Math.max(d.high - low, high - d.low)))?.median ?? 0;
  const nearest = medianOffset(latest.map((d) => Math.max(0, d.low - high, low - d.high)))?.median ?? 0;
  const isFixed = low > 0 && farthest <= low * limits.fixedShare;
  const isScattered = nearest > high * limits.fixedShare;
  return {
    median: middle,
    spreadSeconds: farthest,
    count: latest.length,
    verdict: isFixed ? 'fixed' : isScattered ? 'scattered' : 'too-coarse',
    decibans: capped(decibans(evidenceBound(chanceOf(latest, middle.seconds, limits))), limits),
  };
}

/** The chance of durations so alike, all or but for those farthest from the median that may be left out. */
function chanceOf(
  durations: readonly Duration[],
  median: number,
  { oddShare, patternCount }: DiagnoseLimits,
): number {
  const nearest = durations.toSorted((a, b) => Math.abs(a.seconds - median) - Math.abs(b.seconds - median));
  let chance = 1;
  let ways = 1;
  for (let odd = 0; odd <= durations.length * oddShare; odd += 1) {
    const rest = nearest.slice(0, nearest.length - odd);
    if (rest.length >= patternCount) chance = Math.min(chance, ways * (widestSpread(rest)?.p ?? 1));
    ways *= (durations.length - odd) / (odd + 1);
  }
  return chance;
}

/** The median of some durations; its bounds are the medians of theirs. */
function medianOf(durations: readonly Duration[]): Duration | null {
  const [seconds, low, high] = (['seconds', 'low', 'high'] as const).map((key) =>
    medianOffset(durations.map((d) => d[key])),
  );
  if (seconds == null || low == null || high == null) return null;
  return { seconds: seconds.median, low: low.median, high: high.median };
}

/** What a pattern of times can say of how alike they are, to end a sentence that names their median. */
export function saySpread({ verdict, spreadSeconds }: FixedTime): string {
  if (verdict === 'too-coarse') return ': the timestamps are too coarse to tell whether that time is fixed';
  return `, half of them within ${sayDuration(spreadSeconds)} of it`;
}
