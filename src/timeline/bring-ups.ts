import type {
  BringUp,
  BringUpCause,
  Instant,
  Measure,
  NonEmpty,
  PairTimeline,
  Signal,
  SourceLine,
  TimelineEvent,
} from '../vocabulary.ts';
import { type End, earliestOf, isUnbroken, type Start, waited, watchedStretches } from './bring-up-watch.ts';
import { between, notObserved } from './durations.ts';
import { endLines, linesOf, uniqueLines } from './evidence.ts';
import { groupBy } from './groups.ts';
import { hasHeld, mayHaveHeld, type Stretch, stretchesOf } from './holding.ts';
import type { TimelineRules } from './rules.ts';
import { lightOf } from './stable-light.ts';
import { countUntil, countWhile, firstFrom, stepAt, track } from './tracks.ts';

const causes: Readonly<Record<string, BringUpCause>> = {
  inserted: 'inserted',
  restart: 'restart',
  'reflash-end': 'reflash',
};

/**
 * Every bring-up of a pair in the order of their starts, with sync time and stable light and their bounds.
 * Source: design.md, section 4, Bring-ups and Stable light.
 */
export function bringUpsOf(timeline: PairTimeline, rules: TimelineRules): readonly BringUp[] {
  const starts = timeline.events.flatMap((e) => startOf(timeline, e));
  starts.sort((a, b) => a.event.time - b.event.time);
  const ofHalf = groupBy(starts, (s) => s.half);
  const readies = stretchesOf(timeline, null, 'partner-ready', 'yes');
  const steadies = new Map(
    timeline.halves.map((half) => [half, stretchesOf(timeline, half, 'light', 'steady')]),
  );
  return starts.map((start) => {
    const good = { readies, steadies: steadies.get(start.half) ?? [] };
    return bringUpOf(timeline, start, ofHalf.get(start.half) ?? [], good, rules);
  });
}

function startOf(timeline: PairTimeline, event: TimelineEvent): readonly Start[] {
  const cause = causes[event.signal];
  const half = event.half;
  if (cause === undefined || half === null) return [];
  const roles = track(timeline, half, 'role');
  const role = stepAt(roles, event.time);
  // A role that is taken up after the restart of the half that was active is what it comes back to.
  if (role?.value !== 'active' || role.time >= event.time) return [{ half, cause, event }];
  const next = roles[countUntil(roles, event.time)];
  if (next === undefined) return [];
  if (next.value === 'standby') return [{ half, cause, event: next }];
  const standby = firstFrom(roles, countUntil(roles, event.time), (step) => step.value === 'standby');
  return standby === undefined ? [] : [{ half, cause, event: standby }];
}

function bringUpOf(
  timeline: PairTimeline,
  start: Start,
  starts: readonly Start[],
  good: { readonly readies: readonly Stretch[]; readonly steadies: readonly Stretch[] },
  rules: TimelineRules,
): BringUp {
  const { half, cause, event } = start;
  const end = endOf(timeline, start, starts);
  const readies = watchedStretches(good.readies, event, end);
  const first = readies.find((r) => r.isSeen) ?? null;
  const must = readies.find((r) => hasHeld(r, rules)) ?? null;
  const light = lightOf(timeline, start, end, good.steadies, rules);
  const isKnown = isReadinessKnown(timeline, event, end);
  return {
    pair: timeline.pair,
    half,
    cause,
    start: instantOf(event),
    startDerived: isDerived(event),
    ...identityOf(timeline, start, first?.start.time ?? end.time),
    outcome: outcomeOf(readies, must, end, rules),
    sync: isKnown ? syncOf(event, readies, first, end) : notObserved,
    held: isKnown ? heldOf(event, readies, must, end, rules) : notObserved,
    settledSeconds: must === null ? null : between(event, must.start).seconds,
    light: light.measure,
    settled: must === null ? null : instantOf(must.start),
    mayHaveSettledAt: earliestOf(readies.filter((r) => mayHaveHeld(r, rules)))?.earliest ?? null,
    ready: first === null ? null : instantOf(first.start),
    watchedTo: end.time,
    evidence: evidenceOf(timeline, event, first, must),
    lightEvidence: light.evidence,
  };
}

/** True if the start was read off a state: its line tells of identity, firmware or presence, not of the happening. */
function isDerived(event: TimelineEvent): boolean {
  return event.earliest < event.time;
}

function instantOf({ time, earliest }: Instant): Instant {
  return { time, earliest };
}

/** What the module reported of itself last, after it had started and before it was ready or the watch ended. */
function identityOf(
  timeline: PairTimeline,
  { half, event, cause }: Start,
  until: number,
): Pick<BringUp, 'firmware' | 'model' | 'serial'> {
  const own = (signal: 'firmware' | 'model' | 'serial'): string | null => {
    const steps = track(timeline, half, signal);
    const last = stepAt(steps, until);
    if (last === undefined || last.value === null) return null;
    // What another module of this half reported before the insertion says nothing of this one.
    const isBefore = cause === 'inserted' && last.time < event.earliest;
    return isBefore ? null : last.value;
  };
  return { firmware: own('firmware'), model: own('model'), serial: own('serial') };
}

/** Where the watch of a start ends; `starts` are those of its half, in the order of time. */
function endOf(timeline: PairTimeline, { half, event }: Start, starts: readonly Start[]): End {
  const after = (signal: Signal): TimelineEvent | undefined => {
    const steps = track(timeline, half, signal);
    return steps[countUntil(steps, event.time)];
  };
  const roles = track(timeline, half, 'role');
  const next = starts[countWhile(starts, (s) => s.event.time <= event.time)];
  const removed = after('removed');
  const active = firstFrom(roles, countUntil(roles, event.time), (e) => e.value === 'active');
  const ends: End[] = [{ time: timeline.to, why: 'log-end' }];
  if (active !== undefined) ends.unshift({ time: active.time, why: 'switchover' });
  if (removed !== undefined) ends.unshift({ time: removed.time, why: 'removed' });
  const joined = otherInserted(timeline, half, event.time);
  if (joined !== undefined && stepAt(roles, joined.time)?.value !== 'standby')
    ends.unshift({ time: joined.time, why: 'other-inserted' });
  if (next !== undefined) {
    const until = next.event.time;
    const [reflash, failed] = [after('reflash-start'), after('sync-failed')];
    const isLogged = reflash !== undefined && reflash.time <= until;
    const ofReflash = isLogged ? reflash : implicitReflash(timeline, event, next.event);
    const begun = next.cause === 'reflash' ? ofReflash.time : until;
    const isFailed = failed !== undefined && failed.time <= until;
    ends.unshift({ time: isFailed ? Math.min(begun, failed.time) : begun, why: 'next-start' });
  }
  return ends.reduce((first, end) => (end.time < first.time ? end : first));
}

/** The next module put into the other half: from then on a ready partner may be that one. */
function otherInserted(timeline: PairTimeline, half: string, after: number): TimelineEvent | undefined {
  return timeline.halves
    .filter((other) => other !== half)
    .flatMap((other) => {
      const insertions = track(timeline, other, 'inserted');
      return insertions[countUntil(insertions, after)] ?? [];
    })[0];
}

/** Where the reflash start was not logged, the loss of readiness before the new firmware shows where it began. */
function implicitReflash(timeline: PairTimeline, from: TimelineEvent, end: TimelineEvent): TimelineEvent {
  const ready = stepAt(track(timeline, null, 'partner-ready'), end.time, 'before');
  return ready !== undefined && ready.value === 'no' && ready.time > from.time ? ready : end;
}

/** Settled if a ready surely held; lost if one surely did not; else what ended the watch. */
function outcomeOf(
  readies: readonly Stretch[],
  must: Stretch | null,
  end: End,
  rules: TimelineRules,
): BringUp['outcome'] {
  if (must !== null) return 'settled';
  const isLost = readies.some((r) => r.isSeen && r.mayUntil < end.time && !mayHaveHeld(r, rules));
  if (isLost) return 'lost';
  return end.why === 'removed' || end.why === 'log-end' ? 'unfinished' : 'superseded';
}

/** False where readiness was never logged, or is not known to have been lost by this start: then no time can be told. */
function isReadinessKnown(timeline: PairTimeline, start: TimelineEvent, end: End): boolean {
  const steps = track(timeline, null, 'partner-ready');
  return steps.length > 0 && !isUnbroken(steps, start, end.time, 'yes');
}

/** To the first ready; an unobserved span before it may hide an earlier one. */
function syncOf(start: TimelineEvent, readies: readonly Stretch[], first: Stretch | null, end: End): Measure {
  return waited(start, earliestOf(readies), first?.start ?? null, end);
}

/** To the ready that held: at the earliest the first that may have, at the latest the first that must have. */
function heldOf(
  start: TimelineEvent,
  readies: readonly Stretch[],
  must: Stretch | null,
  end: End,
  rules: TimelineRules,
): Measure {
  return waited(start, earliestOf(readies.filter((r) => mayHaveHeld(r, rules))), must?.start ?? null, end);
}

function evidenceOf(
  timeline: PairTimeline,
  start: TimelineEvent,
  ready: Stretch | null,
  held: Stretch | null,
): NonEmpty<SourceLine> {
  if (ready === null) return uniqueLines([...linesOf(start), ...endLines(timeline).slice(-1)]);
  return uniqueLines([...linesOf(start), ...ready.evidence, ...(held?.evidence ?? [])]);
}
