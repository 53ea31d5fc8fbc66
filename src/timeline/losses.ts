import type { BringUp, Interval, PairTimeline, TimelineEvent } from '../vocabulary.ts';
import { isLoss, readinessOf } from './readiness.ts';
import type { TimelineRules } from './rules.ts';

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
  const begins = timeline.events.filter((e) => e.signal === 'removed' || e.signal === 'reflash-start');
  const spans = begins.map((e) => ({
    half: e.half,
    from: e.earliest - rules.belongsMs,
    to: firstReadyAfter(bringUps, e.half, e.time) ?? timeline.to,
  }));
  // A reflash whose start was not logged began with the loss that its end explains.
  const reflashes = bringUps
    .filter(
      (b) =>
        b.cause === 'reflash' &&
        !begins.some((e) => e.half === b.half && e.time <= b.start.time && isOpen(e, b, bringUps)),
    )
    .flatMap((b) => {
      const loss = readinessOf(timeline).steps.findLast((s) => s.time <= b.start.time);
      const to = b.ready?.time ?? firstReadyAfter(bringUps, b.half, b.start.time) ?? timeline.to;
      return loss !== undefined && isLoss(loss) ? [{ half: b.half, from: loss.earliest, to }] : [];
    });
  return [...spans, ...reflashes];
}

/** True if no bring-up of the half became ready between the logged begin and this reflash: both are one piece of work. */
function isOpen(begin: TimelineEvent, reflash: BringUp, bringUps: readonly BringUp[]): boolean {
  const ready = firstReadyAfter(bringUps, begin.half, begin.time);
  return ready === undefined || ready > reflash.start.time;
}

function firstReadyAfter(
  bringUps: readonly BringUp[],
  half: string | null,
  time: number,
): number | undefined {
  const ready = bringUps.flatMap((b) =>
    b.half === half && b.start.time >= time && b.ready !== null ? [b.ready.time] : [],
  );
  return ready.length === 0 ? undefined : Math.min(...ready);
}

/** Every loss of the ready partner in the order of time, and what kind it is. */
export function lossesOf(
  timeline: PairTimeline,
  planned: readonly PlannedWork[],
  rules: TimelineRules,
): readonly Loss[] {
  const restarts = timeline.events.filter((e) => e.signal === 'restart');
  return readinessOf(timeline)
    .steps.filter(isLoss)
    .map((event) => ({ event, kind: kindOf(event, planned, restarts, rules) }));
}

/** What brought a loss: planned work, a logged restart, or neither, so that it counts. */
export function kindOf(
  loss: TimelineEvent,
  planned: readonly Interval[],
  restarts: readonly TimelineEvent[],
  rules: TimelineRules,
): Loss['kind'] {
  // The bounds of a polled loss may reach back before the removal that brought it.
  if (planned.some((span) => loss.time >= span.from && loss.earliest < span.to && loss.earliest <= span.to))
    return 'planned';
  const ofRestart = restarts.some(
    (r) => loss.time >= r.earliest && loss.earliest <= r.time + rules.belongsMs,
  );
  return ofRestart ? 'restart' : 'counted';
}
