import type { BringUp, Interval, PairTimeline, TimelineEvent } from '../vocabulary.ts';
import { groupBy } from './groups.ts';
import { hasHeld, stretchesOf } from './holding.ts';
import { isLoss, readinessOf } from './readiness.ts';
import type { TimelineRules } from './rules.ts';
import { spanEnds } from './span-ends.ts';
import { countUntil, countWhile, firstFrom, stepAt, track } from './tracks.ts';

/** A loss of the ready partner: planned work, the effect of a logged restart, or one that counts. */
export interface Loss {
  readonly event: TimelineEvent;
  readonly kind: 'planned' | 'restart' | 'counted';
}

/** Work on one half, from a removal or reflash start on: what it takes away meanwhile is planned. */
export interface PlannedWork extends Interval {
  readonly half: string | null;
}

/**
 * Spans of planned work: from a removal or reflash start to the first readiness of the bring-up that follows, or to the
 * end of the log. A partner that was ready again and held ends the work too, and so does any readiness where no bring-up
 * follows: else one line of a wrong clock would excuse every later loss. Source: design.md, section 4, Losses.
 */
export function plannedWorkOf(
  timeline: PairTimeline,
  bringUps: readonly BringUp[],
  rules: TimelineRules,
): readonly PlannedWork[] {
  const firstReady = firstReadyAfter(bringUps);
  const endOfWork = endOfWorkAfter(timeline, bringUps, firstReady, rules);
  const begins = timeline.events.filter((e) => e.signal === 'removed' || e.signal === 'reflash-start');
  const ofHalf = groupBy(begins, (e) => e.half ?? '');
  const spans = begins.map((e) => ({
    half: e.half,
    from: e.earliest - rules.belongsMs,
    to: endOfWork(e),
  }));
  // A reflash whose start was not logged began with the loss that its end explains.
  const { steps } = readinessOf(timeline);
  const reflashes = bringUps
    .filter((b) => b.cause === 'reflash' && !isBegun(b, ofHalf.get(b.half) ?? [], endOfWork))
    .flatMap((b) => {
      const loss = stepAt(steps, b.start.time);
      const to = b.ready?.time ?? firstReady(b.half, b.start.time) ?? timeline.to;
      return loss !== undefined && isLoss(loss) ? [{ half: b.half, from: loss.earliest, to }] : [];
    });
  return [...spans, ...reflashes];
}

type FirstReady = (half: string | null, time: number) => number | undefined;

/**
 * True if the last logged begin of work on the half was not over before this reflash: both are one piece of work. An
 * earlier begin is no nearer to it.
 */
function isBegun(
  reflash: BringUp,
  begins: readonly TimelineEvent[],
  endOfWork: (begin: TimelineEvent) => number,
): boolean {
  const begin = stepAt(begins, reflash.start.time);
  return begin !== undefined && endOfWork(begin) > reflash.start.time;
}

/** When work that began with an event was over; the end of the log where nothing ended it. */
function endOfWorkAfter(
  timeline: PairTimeline,
  bringUps: readonly BringUp[],
  firstReady: FirstReady,
  rules: TimelineRules,
): (begin: TimelineEvent) => number {
  const held = stretchesOf(timeline, null, 'partner-ready', 'yes').filter((s) => hasHeld(s, rules));
  const readies = track(timeline, null, 'partner-ready').filter((s) => s.value === 'yes');
  const lastStart = new Map(
    [...groupBy(bringUps, (b) => b.half)].map(([half, list]) => [
      half,
      Math.max(...list.map((b) => b.start.time)),
    ]),
  );
  return ({ half, time }) => {
    const isFollowed = (lastStart.get(half ?? '') ?? Number.NEGATIVE_INFINITY) >= time;
    const heldAgain = firstFrom(
      held,
      countWhile(held, (s) => s.start.time < time),
      (s) => s.start.earliest >= time,
    );
    const ready = isFollowed ? undefined : readies[countUntil(readies, time)];
    const ends = [firstReady(half, time), heldAgain?.start.time, ready?.time];
    return Math.min(timeline.to, ...ends.filter((end) => end !== undefined));
  };
}

/** When a half was first ready in a bring-up that began at an instant or later. */
function firstReadyAfter(bringUps: readonly BringUp[]): FirstReady {
  const ready = bringUps.filter((b) => b.ready !== null).sort((a, b) => a.start.time - b.start.time);
  const ofHalf = new Map(
    [...groupBy(ready, (b) => b.half)].map(([half, list]) => {
      let first = Number.POSITIVE_INFINITY;
      const firsts = list.toReversed().map(({ ready: at }) => {
        first = Math.min(first, at?.time ?? first);
        return first;
      });
      return [half, { starts: list.map((b) => b.start), firsts: firsts.reverse() }];
    }),
  );
  return (half, time) => {
    const known = ofHalf.get(half ?? '');
    return known?.firsts[countUntil(known.starts, time, 'before')];
  };
}

/** Every loss of the ready partner in the order of time, and what kind it is. */
export function lossesOf(
  timeline: PairTimeline,
  planned: readonly PlannedWork[],
  rules: TimelineRules,
): readonly Loss[] {
  const restarts = timeline.events.filter((e) => e.signal === 'restart');
  const kindOf = kindsOf(planned, restarts, rules);
  return readinessOf(timeline)
    .steps.filter(isLoss)
    .map((event) => ({ event, kind: kindOf(event) }));
}

/** Says what brought a loss: planned work, a logged restart, or neither, so that it counts. */
export function kindsOf(
  planned: readonly Interval[],
  restarts: readonly TimelineEvent[],
  rules: TimelineRules,
): (loss: TimelineEvent) => Loss['kind'] {
  const plannedUntil = spanEnds(planned);
  const restartUntil = spanEnds(restarts.map((r) => ({ from: r.earliest, to: r.time + rules.belongsMs })));
  return ({ time, earliest }) => {
    // The bounds of a polled loss may reach back before the removal that brought it.
    if (earliest < plannedUntil(time)) return 'planned';
    return earliest <= restartUntil(time) ? 'restart' : 'counted';
  };
}
