import type { NonEmpty, PairTimeline, SourceLine, StateSignal, TimelineEvent } from '../vocabulary.ts';
import { subtract } from './coverage.ts';
import type { Stamp } from './durations.ts';
import { linesOf } from './evidence.ts';
import { observationFor } from './observation.ts';
import type { TimelineRules } from './rules.ts';
import { spells, track } from './tracks.ts';

/**
 * A stretch of a state as far as it was observed. A spell that goes on over an unobserved span is several, since it may have
 * been broken there; an unobserved span outside all spells is one too, since it may have been so there.
 */
export interface Stretch {
  /** When it began: in `(earliest, time]`. */
  readonly start: Stamp;
  /** The event that began it; `null` where it was only seen to go on, or not seen at all. */
  readonly step: TimelineEvent | null;
  /** It surely lasted up to here from `start.time` on; not longer than `start.time` where it was not seen. */
  readonly sureUntil: number;
  /** It may have lasted up to here; Infinity where the log ends before it does. */
  readonly mayUntil: number;
  /** It was seen, and not only possible. */
  readonly isSeen: boolean;
  readonly evidence: NonEmpty<SourceLine>;
}

/** The stretches in which a state had a value, or may have had, by when they had begun at the latest. */
export function stretchesOf(
  timeline: PairTimeline,
  half: string | null,
  signal: StateSignal,
  value: string,
): readonly Stretch[] {
  const { unobserved, seenUntil } = observationFor(timeline, half, signal);
  const lastSeen = seenUntil ?? timeline.from;
  const all = spells(track(timeline, half, signal), value);
  const seen = all.flatMap(({ start: step, end }): readonly Stretch[] => {
    const until = end === null ? Math.max(lastSeen, step.time) : Math.max(end.earliest, step.time);
    const mayUntil = end === null ? Number.POSITIVE_INFINITY : end.time;
    const pieces = subtract([{ from: step.time, to: until }], unobserved);
    const first = pieces[0]?.from === step.time ? pieces[0] : undefined;
    const stretches = pieces
      .filter((p) => p !== first)
      .map((piece): Stretch => {
        const gap = unobserved.findLast((u) => u.to <= piece.from);
        const start = { earliest: gap?.from ?? piece.from, time: piece.from, resolution: 0 };
        const evidence = gap?.evidence ?? linesOf(step);
        return { start, step: null, sureUntil: piece.to, mayUntil, isSeen: true, evidence };
      });
    const begun: Stretch = {
      start: step,
      step,
      sureUntil: first?.to ?? step.time,
      mayUntil,
      isSeen: true,
      evidence: linesOf(step),
    };
    return [begun, ...stretches];
  });
  // One that ended in an unobserved span may have ended, begun again and ended again there.
  const certain = all.map(({ start, end }) => ({
    from: start.earliest,
    to: end === null ? Number.POSITIVE_INFINITY : Math.max(end.earliest, start.time),
  }));
  const unseen = unobserved.flatMap((gap) =>
    subtract([gap], certain)
      .filter((part) => part.to > part.from)
      .map(({ from, to }): Stretch => {
        const start = { earliest: from, time: to, resolution: 0 };
        const mayUntil = to >= timeline.to ? Number.POSITIVE_INFINITY : to;
        return { start, step: null, sureUntil: from, mayUntil, isSeen: false, evidence: gap.evidence };
      }),
  );
  return [...seen, ...unseen].sort(
    (a, b) => a.start.time - b.start.time || a.start.earliest - b.start.earliest,
  );
}

/** A stretch cut where a watch on it ends. */
export function cutAt(stretch: Stretch, limit: number): Stretch {
  return {
    ...stretch,
    sureUntil: Math.min(stretch.sureUntil, limit),
    mayUntil: Math.min(stretch.mayUntil, limit),
  };
}

/** True if the state surely held for the hold time. */
export function hasHeld({ start, sureUntil }: Stretch, { holdMs }: TimelineRules): boolean {
  return sureUntil - start.time - start.resolution >= holdMs;
}

/** True if the state may have held for the hold time, as far as bounds and unobserved spans leave it open. */
export function mayHaveHeld({ start, mayUntil }: Stretch, { holdMs }: TimelineRules): boolean {
  return mayUntil - start.earliest + start.resolution >= holdMs;
}
