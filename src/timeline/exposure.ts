import type { Interval, NonEmpty, PairTimeline, SourceLine, Span } from '../vocabulary.ts';
import { clip, subtract, total } from './coverage.ts';
import { between, exactly } from './durations.ts';
import { linesOf, linesOfAll } from './evidence.ts';
import { readinessOf } from './readiness.ts';
import { spells } from './tracks.ts';

/** One stretch without a ready partner. */
export interface Exposed extends Interval {
  readonly seconds: number;
  readonly low: number;
  readonly high: number;
  readonly evidence: NonEmpty<SourceLine>;
}

/**
 * The stretches without a ready partner, in the order of time. One that goes on when the log ends is counted to there.
 * Unobserved time inside a stretch is not counted as exposure for certain: it is taken off `low`.
 */
export function exposedSpans(timeline: PairTimeline): readonly Exposed[] {
  return spells(readinessOf(timeline).steps, 'no').map(({ start, end }) => {
    const duration = between(start, end ?? exactly(Math.max(timeline.to, start.time)));
    const to = end?.time ?? timeline.to;
    const unseen = total(clip(timeline.unobserved, start.time, to)) / 1000;
    return {
      from: start.time,
      to,
      seconds: duration.seconds,
      low: Math.max(0, duration.low - unseen),
      high: duration.high,
      evidence: end === null ? linesOf(start) : linesOfAll([start, end]),
    };
  });
}

/**
 * The sum of several stretches, cut to a window; bounds are those of the whole stretches, cut alike. What was not observed
 * outside of them may have been one too: it is added to `high`.
 */
export function sumSpans(
  { unobserved }: Pick<PairTimeline, 'unobserved'>,
  exposed: readonly Exposed[],
  from: number,
  to: number,
): Span {
  const inside = exposed.filter((e) => e.to > from && e.from < to);
  const cut = inside.map((e) => {
    const lost = (Math.max(0, from - e.from) + Math.max(0, e.to - to)) / 1000;
    const room = (to - from) / 1000;
    return {
      from: Math.max(e.from, from),
      to: Math.min(e.to, to),
      seconds: Math.max(0, e.seconds - lost),
      low: Math.max(0, e.low - lost),
      high: Math.min(room, Math.max(0, e.high - lost)),
    };
  });
  const unseen = subtract(clip(unobserved, from, to), inside);
  const sum = (key: 'seconds' | 'low' | 'high'): number => round(cut.reduce((s, c) => s + c[key], 0));
  return {
    seconds: sum('seconds'),
    low: sum('low'),
    high: round(Math.min((to - from) / 1000, sum('high') + total(unseen) / 1000)),
    spans: cut.map((c) => ({ from: c.from, to: c.to })),
  };
}

/** Milliseconds are the finest thing a stamp says; a sum of them must not show more. */
function round(seconds: number): number {
  return Math.round(seconds * 1000) / 1000;
}

/**
 * Share of the observed time with a ready partner, 0 to 1; `null` if nothing was observed. Source: IEC 60050-192:2015,
 * 192-08-05, mean availability: up time over up and down time.
 */
export function availabilityOf(timeline: PairTimeline): number | null {
  const { steps } = readinessOf(timeline);
  const first = steps[0];
  if (first === undefined) return null;
  const known = clip(timeline.observed, first.time, timeline.to);
  const observed = total(known);
  if (observed === 0) return null;
  const down = exposedSpans(timeline).map(({ from, to }) => ({ from, to }));
  const seen = subtract(known, down);
  return total(seen) / observed;
}
