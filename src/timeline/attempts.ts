import type { Attempt, BringUp, Instant, PairTimeline, TimelineEvent } from '../vocabulary.ts';
import { type Ending, type Open, toAttempt } from './attempt-outcomes.ts';
import { keyOf } from './groups.ts';
import { hasHeld, mayHaveHeld, type Stretch, stretchesOf } from './holding.ts';
import type { TimelineRules } from './rules.ts';
import { removalOf } from './stages.ts';
import { standbyAt } from './standby.ts';
import { countUntil, track, valueAt } from './tracks.ts';

interface Walk {
  readonly timeline: PairTimeline;
  readonly rules: TimelineRules;
  readonly starts: ReadonlyMap<TimelineEvent, BringUp>;
  /** The stretches in which the partner was ready, or may have been, and those of them that an event began. */
  readonly readies: readonly Stretch[];
  readonly begun: ReadonlyMap<TimelineEvent | null, Stretch>;
  readonly open: Open | null;
  /** A sync start while the partner was ready as far as was read by then: no attempt of its own unless it fails. */
  readonly early: TimelineEvent | null;
  /** The failed sync that ended the last attempt. */
  readonly failure: TimelineEvent | null;
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
  const readies = stretchesOf(timeline, null, 'partner-ready', 'yes');
  const begun = new Map(readies.map((r) => [r.step, r]));
  const nothing = { open: null, early: null, failure: null, done: [] };
  let walk: Walk = { timeline, rules, starts, readies, begun, ...nothing };
  for (const stamp of byStamp(timeline.events))
    for (const event of inTurn(stamp, walk.open)) walk = step(walk, event);
  return close(walk, null, 'log-end').done;
}

function placeOf(half: string | null, { time, earliest }: Instant): string {
  return keyOf(half, `${time} ${earliest}`);
}

function byStamp(events: readonly TimelineEvent[]): readonly (readonly TimelineEvent[])[] {
  const stamps: TimelineEvent[][] = [];
  for (const event of events) {
    const last = stamps.at(-1);
    if (last?.[0]?.time === event.time) last.push(event);
    else stamps.push([event]);
  }
  return stamps;
}

/** Of one stamp, a sync that is under way fails before anything else that ends its attempt, as before the next sync starts. */
function inTurn(stamp: readonly TimelineEvent[], open: Open | null): readonly TimelineEvent[] {
  const failed = open?.syncStart == null ? undefined : stamp.find((e) => e.signal === 'sync-failed');
  return failed === undefined ? stamp : [failed, ...stamp.filter((e) => e !== failed)];
}

function step(walk: Walk, event: TimelineEvent): Walk {
  const { open, starts } = walk;
  const bringUp = starts.get(event);
  if (bringUp !== undefined) {
    const isAgain = bringUp.cause !== 'reflash' && open?.half === bringUp.half;
    const closed = close(walk, event, isAgain ? 'cut-short' : 'superseded');
    return begin(closed, bringUp.half, bringUp.cause, event);
  }
  switch (event.signal) {
    case 'sync-start':
      return syncStarted(walk, event);
    case 'sync-failed':
      return syncFailed(walk, event);
    case 'partner-ready':
      return event.value === 'yes' ? becameReady(walk, event) : wasLost(walk, event);
    case 'removed':
      return open?.half === event.half ? close(walk, event, 'cut-short') : walk;
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
  return { ...walk, open: { half, cause, start, syncStart }, early: null };
}

/** A sync of a half: where its line does not say which, of the one that should be standby. */
function beginSync(walk: Walk, start: TimelineEvent): Walk {
  return begin(walk, start.half ?? standbyAt(walk.timeline, start.time), 'sync', start);
}

function syncStarted(walk: Walk, event: TimelineEvent): Walk {
  const { open, timeline } = walk;
  if (open === null && valueAt(track(timeline, null, 'partner-ready'), event.time) === 'yes')
    return { ...walk, early: event };
  if (open !== null && open.cause !== 'loss' && open.syncStart === null)
    return { ...walk, open: { ...open, syncStart: event } };
  return beginSync(close(walk, event, 'cut-short'), event);
}

/** A failed sync whose start was not logged is known by its end alone: the wait after a loss was not it. */
function syncFailed(walk: Walk, event: TimelineEvent): Walk {
  const { open, early } = walk;
  if (open === null && isRetold(walk, event)) return walk;
  const isWait = open === null || open.cause === 'loss';
  const begun = isWait ? beginSync(walk, early ?? event) : walk;
  return { ...close(begun, event, 'failed'), failure: event };
}

/** Both halves may tell of one failed sync, each at its own time. */
function isRetold({ failure, rules }: Walk, { half, time }: TimelineEvent): boolean {
  return failure !== null && failure.half !== half && time - failure.time <= rules.mergeMs;
}

/** Ready and held, or surely not; where what was read leaves that open, nothing is said of the attempt. */
function becameReady(walk: Walk, event: TimelineEvent): Walk {
  const { begun, rules } = walk;
  const ready = begun.get(event);
  if (ready === undefined || walk.open === null) return { ...walk, early: null };
  if (hasHeld(ready, rules)) return close(walk, event, 'ready');
  // The log ends before it held, or planned work did: the attempt goes on until that.
  if (ready.mayUntil === Number.POSITIVE_INFINITY || isPlanned(walk, event, ready.mayUntil)) return walk;
  return close(walk, event, mayHaveHeld(ready, rules) ? 'undecided' : 'lost');
}

/** True if a removal or a reflash began between a ready partner and its loss, or brought that. */
function isPlanned({ timeline, rules }: Walk, ready: TimelineEvent, lostAt: number): boolean {
  const { events } = timeline;
  const later = events.slice(countUntil(events, ready.time), countUntil(events, lostAt + rules.belongsMs));
  return later.some((e) => e.signal === 'removed' || e.signal === 'reflash-start');
}

function wasLost(walk: Walk, event: TimelineEvent): Walk {
  const { open, early, timeline } = walk;
  if (open !== null) return walk;
  // A poll may read the loss after the sync that followed it had started.
  if (early !== null && early.time > event.earliest) return beginSync(walk, early);
  const half = standbyAt(timeline, event.time);
  // Of an empty place nothing is waited for.
  return half === null || removalOf(timeline, half, event.time) !== null
    ? walk
    : begin(walk, half, 'loss', event);
}

function close(walk: Walk, event: TimelineEvent | null, ending: Ending): Walk {
  const { open, done, timeline, rules, readies } = walk;
  if (open === null) return walk;
  // The wait after a loss was only what came before this attempt.
  const isReplaced = open.cause === 'loss' && (ending === 'superseded' || ending === 'cut-short');
  if (!isReplaced) done.push(toAttempt(timeline, readies, open, event, ending, rules));
  return { ...walk, open: null };
}

/** An attempt that certainly came to nothing: it failed, did not hold, or was not ready within its limit. Source: design.md, section 6. */
export function isFailed({ outcome }: Attempt): boolean {
  return outcome === 'failed' || outcome === 'lost' || outcome === 'overdue';
}
