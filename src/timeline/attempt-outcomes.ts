import type { Attempt, Duration, PairTimeline, TimelineEvent } from '../vocabulary.ts';
import { isUnbroken } from './bring-up-watch.ts';
import { between, exactly, type Stamp } from './durations.ts';
import { endLines, linesOf, uniqueLines } from './evidence.ts';
import { mayHaveHeld, type Stretch } from './holding.ts';
import { identityAt } from './module-changes.ts';
import type { TimelineRules } from './rules.ts';
import { stagesBetween } from './stages.ts';
import { track, valueAt } from './tracks.ts';

/** An attempt that is under way. */
export interface Open {
  readonly half: string | null;
  readonly cause: Attempt['cause'];
  readonly start: TimelineEvent;
  readonly syncStart: TimelineEvent | null;
}

/**
 * What ended an attempt: a ready partner that held or surely did not, or of which that is not known; a logged `sync-failed`;
 * work that came first; a removal or the next start, before which it may have been overdue; the end of the log.
 */
export type Ending = 'ready' | 'lost' | 'undecided' | 'failed' | 'superseded' | 'cut-short' | 'log-end';

/** An attempt that has ended, with its outcome as far as what was read can tell. `readies` as `stretchesOf` gives them. */
export function toAttempt(
  timeline: PairTimeline,
  readies: readonly Stretch[],
  open: Open,
  event: TimelineEvent | null,
  ending: Ending,
  rules: TimelineRules,
): Attempt {
  const { half, cause, start, syncStart } = open;
  const end = event ?? exactly(Math.max(timeline.to, start.time));
  const unseen = unseenFrom(readies, start, end, rules);
  const watched = lasting(start, end, unseen);
  const until = ending === 'ready' ? watchedTo(timeline, end.time, rules) : end;
  return {
    pair: timeline.pair,
    half,
    cause,
    start: { time: start.time, earliest: start.earliest },
    end: { time: end.time, earliest: end.earliest },
    outcome: outcomeOf(timeline, { start, end, unseen, watched }, ending, rules),
    watched,
    abort: ending === 'failed' && syncStart !== null ? between(syncStart, end) : null,
    ...identityOf(timeline, half, Math.max(start.time, end.time - 1)),
    // What failed to synchronise had begun to, though no line says when.
    stages: stagesBetween(
      timeline,
      half,
      start,
      until,
      syncStart?.time ?? (ending === 'failed' ? end.time : null),
    ),
    evidence: uniqueLines([
      ...linesOf(start),
      ...(event === null ? endLines(timeline).slice(-1) : linesOf(event)),
    ]),
  };
}

/** The first instant in an attempt at which an unobserved partner may have begun to be ready, and have held; `null` without. */
function unseenFrom(
  readies: readonly Stretch[],
  start: TimelineEvent,
  end: Stamp,
  rules: TimelineRules,
): number | null {
  const first = readies.find(
    (r) => !r.isSeen && r.start.earliest < end.time && r.mayUntil > start.time && mayHaveHeld(r, rules),
  );
  return first === undefined ? null : Math.max(first.start.earliest, start.time);
}

function lasting(start: TimelineEvent, end: Stamp, unseen: number | null): Duration {
  const whole = between(start, end);
  return unseen === null
    ? whole
    : { ...whole, low: Math.min(whole.low, between(start, exactly(unseen)).low) };
}

interface Judged {
  readonly start: TimelineEvent;
  readonly end: Stamp;
  readonly unseen: number | null;
  readonly watched: Duration;
}

/** What was logged of the end decides; where nothing was, how long it was surely watched without a ready partner. */
function outcomeOf(
  timeline: PairTimeline,
  { start, end, unseen, watched }: Judged,
  ending: Ending,
  rules: TimelineRules,
): Attempt['outcome'] {
  if (ending === 'undecided') return 'inconclusive';
  if (ending === 'ready' || ending === 'lost' || ending === 'failed') return ending;
  const steps = track(timeline, null, 'partner-ready');
  // It was never seen to be lost, or nothing tells of it at all.
  if (steps.length === 0 || isUnbroken(steps, start, end.time, 'yes')) return 'inconclusive';
  if (ending === 'log-end' && valueAt(steps, end.time) === 'yes') return 'unfinished';
  if (ending !== 'superseded' && watched.low > rules.lightLimitSeconds) return 'overdue';
  if (unseen !== null) return 'inconclusive';
  return ending === 'log-end' ? 'unfinished' : 'superseded';
}

function identityOf(
  timeline: PairTimeline,
  half: string | null,
  time: number,
): Pick<Attempt, 'model' | 'serial' | 'firmware'> {
  return half === null ? { model: null, serial: null, firmware: null } : identityAt(timeline, half, time);
}

/** A ready standby is watched on for its steady light, as long as the limit allows and it is ready. */
function watchedTo(timeline: PairTimeline, ready: number, rules: TimelineRules): Stamp {
  const loss = track(timeline, null, 'partner-ready').find((s) => s.time > ready && s.value !== 'yes');
  const limit = ready + rules.lightLimitSeconds * 1000;
  return exactly(Math.min(loss?.earliest ?? timeline.to, limit, timeline.to));
}
