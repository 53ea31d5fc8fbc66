import type { Attempt, BringUp, Instant, PairTimeline, TimelineEvent } from '../vocabulary.ts';
import { between, exactly } from './durations.ts';
import { endLines, linesOf, uniqueLines } from './evidence.ts';
import { keyOf } from './groups.ts';
import { identityAt } from './module-changes.ts';
import type { TimelineRules } from './rules.ts';
import { stagesBetween } from './stages.ts';
import { standbyAt } from './standby.ts';
import { countUntil, firstFrom, track, valueAt } from './tracks.ts';

/** An attempt that is under way while the events are walked through. */
interface Open {
  readonly half: string;
  readonly cause: Attempt['cause'];
  readonly start: TimelineEvent;
  readonly syncStart: TimelineEvent | null;
}

interface Walk {
  readonly timeline: PairTimeline;
  readonly rules: TimelineRules;
  readonly starts: ReadonlyMap<TimelineEvent, BringUp>;
  readonly open: Open | null;
  /** Those that ended; all steps of the walk add to it. */
  readonly done: Attempt[];
}

/**
 * Every attempt of a pair to get a ready standby, in the order of their starts: each bring-up, each further sync start,
 * and, where nothing else began, the wait after a loss. A bring-up ends here with the first failed sync: what follows is
 * another attempt.
 */
export function attemptsOf(
  timeline: PairTimeline,
  bringUps: readonly BringUp[],
  rules: TimelineRules,
): readonly Attempt[] {
  const firsts = new Map<string, TimelineEvent>();
  for (const event of timeline.events)
    if (!firsts.has(placeOf(event.half, event))) firsts.set(placeOf(event.half, event), event);
  const starts = new Map<TimelineEvent, BringUp>();
  for (const bringUp of bringUps) {
    const event = firsts.get(placeOf(bringUp.half, bringUp.start));
    if (event !== undefined) starts.set(event, bringUp);
  }
  let walk: Walk = { timeline, rules, starts, open: null, done: [] };
  for (const event of timeline.events) walk = step(walk, event);
  return close(walk, null, 'unfinished').done;
}

function placeOf(half: string | null, { time, earliest }: Instant): string {
  return keyOf(half, `${time} ${earliest}`);
}

function step(walk: Walk, event: TimelineEvent): Walk {
  const { open, starts } = walk;
  const bringUp = starts.get(event);
  if (bringUp !== undefined) {
    const anew = bringUp.cause !== 'reflash' && open?.half === bringUp.half;
    return begin(close(walk, event, anew ? 'failed' : 'superseded'), bringUp.half, bringUp.cause, event);
  }
  switch (event.signal) {
    case 'sync-start':
      return syncStarted(walk, event);
    case 'sync-failed':
      return close(failing(walk, event), event, 'failed');
    case 'partner-ready':
      return event.value === 'yes' ? becameReady(walk, event) : wasLost(walk, event);
    case 'removed':
      return open?.half === event.half ? close(walk, event, waited(walk, event)) : walk;
    case 'reflash-start':
      return close(walk, event, 'superseded');
    case 'role':
      return event.value === 'active' && open?.half === event.half ? close(walk, event, 'superseded') : walk;
    default:
      return walk;
  }
}

function begin(walk: Walk, half: string | null, cause: Attempt['cause'], start: TimelineEvent): Walk {
  const syncStart = start.signal === 'sync-start' ? start : null;
  return half === null ? walk : { ...walk, open: { half, cause, start, syncStart } };
}

function syncStarted(walk: Walk, event: TimelineEvent): Walk {
  const { open, timeline } = walk;
  const ready = valueAt(track(timeline, null, 'partner-ready'), event.time) === 'yes';
  if (open === null && ready) return walk;
  if (open !== null && open.cause !== 'loss' && open.syncStart === null)
    return { ...walk, open: { ...open, syncStart: event } };
  return begin(close(walk, event, 'failed'), event.half ?? standbyAt(timeline, event.time), 'sync', event);
}

/** A failed sync whose start was not logged began, as far as one can tell, with the loss, or is only known by its end. */
function failing(walk: Walk, event: TimelineEvent): Walk {
  const { open, timeline } = walk;
  if (open === null) return begin(walk, event.half ?? standbyAt(timeline, event.time), 'sync', event);
  return open.cause === 'loss' ? { ...walk, open: { ...open, cause: 'sync' } } : walk;
}

function becameReady(walk: Walk, event: TimelineEvent): Walk {
  const steps = track(walk.timeline, null, 'partner-ready');
  const loss = firstFrom(steps, countUntil(steps, event.time), (s) => s.value !== 'yes');
  const until = loss?.earliest ?? walk.timeline.to;
  if (until - event.time >= walk.rules.holdMs) return close(walk, event, 'ready');
  return loss === undefined ? walk : close(walk, event, 'lost');
}

function wasLost(walk: Walk, event: TimelineEvent): Walk {
  if (walk.open !== null) return walk;
  return begin(walk, standbyAt(walk.timeline, event.time), 'loss', event);
}

/** A module pulled before the limit for its light was over had no fair try. */
function waited({ open, rules }: Walk, event: TimelineEvent): Attempt['outcome'] {
  const low = open === null ? 0 : between(open.start, event).low;
  return low >= rules.lightLimitSeconds ? 'failed' : 'superseded';
}

function close(walk: Walk, event: TimelineEvent | null, outcome: Attempt['outcome']): Walk {
  const { open, done } = walk;
  if (open === null) return walk;
  // The wait after a loss was only what came before this attempt.
  const replaced = open.cause === 'loss' && event !== null && outcome !== 'ready' && outcome !== 'lost';
  if (!replaced) done.push(toAttempt(walk, open, event, outcome));
  return { ...walk, open: null };
}

function toAttempt(
  { timeline, rules }: Walk,
  { half, cause, start, syncStart }: Open,
  event: TimelineEvent | null,
  outcome: Attempt['outcome'],
): Attempt {
  const end = event ?? exactly(Math.max(timeline.to, start.time));
  const aborted = event?.signal === 'sync-failed' && syncStart !== null;
  const identity = identityAt(timeline, half, Math.max(start.time, end.time - 1));
  const stages = stagesBetween(
    timeline,
    half,
    start,
    outcome === 'ready' ? watchedTo(timeline, end.time, rules) : end,
    syncStart?.time ?? null,
  );
  return {
    pair: timeline.pair,
    half,
    cause,
    start: { time: start.time, earliest: start.earliest },
    end: { time: end.time, earliest: end.earliest },
    outcome,
    watchedSeconds: (end.time - start.time) / 1000,
    abortSeconds: aborted ? (end.time - syncStart.time) / 1000 : null,
    ...identity,
    stages,
    evidence: uniqueLines([
      ...linesOf(start),
      ...(event === null ? endLines(timeline).slice(-1) : linesOf(event)),
    ]),
  };
}

/** A ready standby is watched on for its steady light, as long as the limit allows and it is ready. */
function watchedTo(timeline: PairTimeline, ready: number, rules: TimelineRules): ReturnType<typeof exactly> {
  const loss = track(timeline, null, 'partner-ready').find((s) => s.time > ready && s.value !== 'yes');
  const limit = ready + rules.lightLimitSeconds * 1000;
  return exactly(Math.min(loss?.earliest ?? timeline.to, limit, timeline.to));
}

/** An attempt that certainly came to nothing: it failed, did not hold, or is watched past the limit for the light. */
export function isFailed({ outcome, watchedSeconds }: Attempt, limitSeconds: number): boolean {
  if (outcome === 'failed' || outcome === 'lost') return true;
  return outcome === 'unfinished' && watchedSeconds >= limitSeconds;
}
