import type { Duration, Interval, NonEmpty, PairTimeline, SourceLine, TimelineEvent } from '../vocabulary.ts';
import { subtract } from './coverage.ts';
import { between, exactly } from './durations.ts';
import { linesOfAll } from './evidence.ts';
import { unobservedIn } from './observation.ts';
import { byOwnClock } from './own-clock.ts';
import { stepAt, track } from './tracks.ts';

/** A span in which both halves were active, or neither. */
export interface Conflict extends Interval {
  readonly kind: 'two-active' | 'none-active';
  /** It surely lasted so long without a break, in seconds. */
  readonly low: number;
  readonly seconds: number;
  readonly high: number;
  /** At one instant at least the roles of both halves were read so. */
  readonly isSeen: boolean;
  /** It went on when the log ended. */
  readonly goesOn: boolean;
  readonly evidence: NonEmpty<SourceLine>;
}

/**
 * Spans with both halves active or neither, from the first instant at which the roles of both are known: by what lines state
 * alone, and by a module that is out. Source: design.md, section 2, Roles are what the lines say.
 */
export function conflictsOf(timeline: PairTimeline): readonly Conflict[] {
  const [first, second] = timeline.halves.map((half) => track(timeline, half, 'role'));
  if (first === undefined || second === undefined) return [];
  const moments = [...first, ...second].sort((a, b) => a.time - b.time || a.earliest - b.earliest);
  const conflicts: Conflict[] = [];
  let open: { kind: Conflict['kind']; start: TimelineEvent } | null = null;
  for (const [index, moment] of moments.entries()) {
    const next = moments[index + 1];
    if (next?.time === moment.time && !passesThrough(moment, next)) continue;
    const others = moment.half === timeline.halves[0] ? second : first;
    const kind = conflictAt(moment, stepAt(others, moment.time));
    if (open !== null && kind !== open.kind) {
      conflicts.push(conflictOf(timeline, open.kind, open.start, moment));
      open = null;
    }
    if (kind !== null && open === null) open = { kind, start: moment };
  }
  return open === null ? conflicts : [...conflicts, conflictOf(timeline, open.kind, open.start, null)];
}

/** A half that was out at some time before the stamp in which it is back: bounds, not a point. */
function passesThrough(moment: TimelineEvent, next: TimelineEvent): boolean {
  return moment.half === next.half && moment.earliest < moment.time;
}

function conflictAt(a: TimelineEvent | undefined, b: TimelineEvent | undefined): Conflict['kind'] | null {
  if (!isStated(a) || !isStated(b)) return null;
  if (a.value === 'active' && b.value === 'active') return 'two-active';
  return a.value !== 'active' && b.value !== 'active' ? 'none-active' : null;
}

function isStated(step: TimelineEvent | undefined): step is TimelineEvent {
  return step !== undefined && step.value !== null && !step.concluded;
}

function conflictOf(
  timeline: PairTimeline,
  kind: Conflict['kind'],
  start: TimelineEvent,
  end: TimelineEvent | null,
): Conflict {
  const to = end ?? exactly(Math.max(timeline.to, start.time));
  const whole = between(start, to);
  const others = soonestChange(timeline, start.time, end);
  const sure = Math.min(to.earliest, others);
  const seen = Math.min(
    whole.low,
    Math.max(0, sure - start.time) / 1000,
    longestSeen(timeline, start.time, sure),
  );
  // A file whose clock is off knows well how long it lasted, if nobody else tells of a change in between.
  const own = end === null || others < end.time ? null : byOwnClock(start, end);
  return {
    kind,
    from: start.time,
    to: to.time,
    ...narrowed(whole, own),
    low: Math.max(seen, own?.low ?? 0),
    isSeen: sure >= start.time || (own !== null && own.low >= 0),
    goesOn: end === null,
    evidence: end === null ? linesOfAll([start]) : linesOfAll([start, end]),
  };
}

function narrowed(whole: Duration, own: ReturnType<typeof byOwnClock>): Duration {
  if (own === null || own.low > whole.high || own.high < whole.low) return whole;
  const [low, high] = [Math.max(whole.low, own.low), Math.min(whole.high, own.high)];
  return { low, high, seconds: Math.min(high, Math.max(low, whole.seconds)) };
}

/**
 * When the role of either half may have changed unseen at the earliest after an instant, as between two readings, the change
 * that ends the span left out; never, if it cannot have.
 */
function soonestChange(timeline: PairTimeline, time: number, end: TimelineEvent | null): number {
  return timeline.halves
    .flatMap((half) =>
      track(timeline, half, 'role').filter((s) => s !== end && s.time > time && s.earliest < s.time),
    )
    .reduce((least, s) => Math.min(least, s.earliest), Number.POSITIVE_INFINITY);
}

/** The longest stretch of a span in which the roles of both halves were observed, in seconds. */
function longestSeen(timeline: PairTimeline, from: number, to: number): number {
  const unseen = timeline.halves
    .flatMap((half) => unobservedIn(timeline, half, 'role', from, to))
    .sort((a, b) => a.from - b.from);
  const seen = to > from ? subtract([{ from, to }], unseen) : [];
  return seen.reduce((most, s) => Math.max(most, s.to - s.from), 0) / 1000;
}
