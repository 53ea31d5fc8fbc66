import type { BringUp, Interval, PairTimeline, TimelineEvent } from '../vocabulary.ts';
import { groupBy } from './groups.ts';
import { isLoss, readinessOf } from './readiness.ts';
import type { TimelineRules } from './rules.ts';
import { spanEnds } from './span-ends.ts';
import { countUntil, stepAt } from './tracks.ts';

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
 * end of the log. Source: design.md, section 4, Losses.
 */
export function plannedWorkOf(
  timeline: PairTimeline,
  bringUps: readonly BringUp[],
  rules: TimelineRules,
): readonly PlannedWork[] {
  const firstReady = firstReadyAfter(bringUps);
  const begins = timeline.events.filter((e) => e.signal === 'removed' || e.signal === 'reflash-start');
  const ofHalf = groupBy(begins, (e) => e.half ?? '');
  const spans = begins.map((e) => ({
    half: e.half,
    from: e.earliest - rules.belongsMs,
    to: firstReady(e.half, e.time) ?? timeline.to,
  }));
  // A reflash whose start was not logged began with the loss that its end explains.
  const { steps } = readinessOf(timeline);
  const reflashes = bringUps
    .filter((b) => b.cause === 'reflash' && !isBegun(b, ofHalf.get(b.half) ?? [], firstReady))
    .flatMap((b) => {
      const loss = stepAt(steps, b.start.time);
      const to = b.ready?.time ?? firstReady(b.half, b.start.time) ?? timeline.to;
      return loss !== undefined && isLoss(loss) ? [{ half: b.half, from: loss.earliest, to }] : [];
    });
  return [...spans, ...reflashes];
}

type FirstReady = (half: string | null, time: number) => number | undefined;

/**
 * True if no bring-up of the half became ready between the last logged begin of work and this reflash: both are one piece of
 * work. An earlier begin is no nearer to it.
 */
function isBegun(reflash: BringUp, begins: readonly TimelineEvent[], firstReady: FirstReady): boolean {
  const begin = stepAt(begins, reflash.start.time);
  if (begin === undefined) return false;
  const ready = firstReady(begin.half, begin.time);
  return ready === undefined || ready > reflash.start.time;
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
