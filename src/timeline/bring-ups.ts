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
import { type End, holdLimit, isUnbroken, type Start } from './bring-up-watch.ts';
import { between, censored, exactly, measured, notObserved } from './durations.ts';
import { endLines, linesOf, linesOfAll, uniqueLines } from './evidence.ts';
import { groupBy } from './groups.ts';
import type { TimelineRules } from './rules.ts';
import { lightOf } from './stable-light.ts';
import { countUntil, countWhile, firstFrom, type Spell, spells, stepAt, track } from './tracks.ts';

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
  const readies = spells(track(timeline, null, 'partner-ready'), 'yes');
  return starts.map((start) => bringUpOf(timeline, start, ofHalf.get(start.half) ?? [], readies, rules));
}

function startOf(timeline: PairTimeline, event: TimelineEvent): readonly Start[] {
  const cause = causes[event.signal];
  const half = event.half;
  if (cause === undefined || half === null) return [];
  const roles = track(timeline, half, 'role');
  if (stepAt(roles, event.time)?.value !== 'active') return [{ half, cause, event }];
  const standby = firstFrom(roles, countUntil(roles, event.time), (step) => step.value === 'standby');
  return standby === undefined ? [] : [{ half, cause, event: standby }];
}

function bringUpOf(
  timeline: PairTimeline,
  start: Start,
  starts: readonly Start[],
  allReadies: readonly Spell[],
  rules: TimelineRules,
): BringUp {
  const { half, cause, event } = start;
  const end = endOf(timeline, start, starts);
  const readies = readiesOf(timeline, allReadies, event, end, rules);
  const first = readies[0] ?? null;
  const held = readies.find((r) => r.held) ?? null;
  const identity = (signal: 'firmware' | 'model' | 'serial'): string | null => {
    const steps = track(timeline, half, signal);
    const during = firstFrom(steps, countUntil(steps, event.earliest, 'before'), (s) => s.value !== null);
    const isInTime = during !== undefined && during.time <= end.time;
    return stepAt(steps, event.time)?.value ?? (isInTime ? during.value : null);
  };
  const light = lightOf(timeline, start, end, rules);
  return {
    pair: timeline.pair,
    half,
    cause,
    start: instantOf(event),
    startDerived: isDerived(event),
    firmware: identity('firmware'),
    model: identity('model'),
    serial: identity('serial'),
    outcome: outcomeOf(
      held !== null,
      readies.some((r) => r.lost),
      end,
    ),
    sync: syncOf(timeline, event, first?.step ?? null, end),
    settledSeconds: held === null ? null : between(event, held.step).seconds,
    light: light.measure,
    settled: held === null ? null : instantOf(held.step),
    ready: first === null ? null : instantOf(first.step),
    watchedTo: end.time,
    evidence: evidenceOf(timeline, event, first?.step ?? null, held?.step ?? null),
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

/** Where the reflash start was not logged, the loss of readiness before the new firmware shows where it began. */
function implicitReflash(timeline: PairTimeline, from: TimelineEvent, end: TimelineEvent): TimelineEvent {
  const ready = stepAt(track(timeline, null, 'partner-ready'), end.time, 'before');
  return ready !== undefined && ready.value === 'no' && ready.time > from.time ? ready : end;
}

interface Ready {
  readonly step: TimelineEvent;
  readonly held: boolean;
  /** It ended, before the watch did, without having held. */
  readonly lost: boolean;
}

function readiesOf(
  timeline: PairTimeline,
  all: readonly Spell[],
  start: TimelineEvent,
  end: End,
  rules: TimelineRules,
): readonly Ready[] {
  const from = countWhile(all, ({ start: step }) => step.time < start.time || step.time <= start.earliest);
  const to = countWhile(all, ({ start: step }) => step.time <= end.time);
  return all.slice(from, to).map(({ start: step, end: loss }) => {
    const until = loss === null ? timeline.to : loss.earliest;
    // A reflash or removal that ends the watch may come before the hold time is over: then it has not held.
    const held = Math.min(until, holdLimit(end, timeline.to)) - step.time >= rules.holdMs;
    return { step, held, lost: !held && loss !== null && loss.time < end.time };
  });
}

function outcomeOf(settled: boolean, lost: boolean, end: End): BringUp['outcome'] {
  if (settled) return 'settled';
  if (lost) return 'lost';
  return end.why === 'next-start' || end.why === 'switchover' ? 'superseded' : 'unfinished';
}

function syncOf(
  timeline: PairTimeline,
  start: TimelineEvent,
  ready: TimelineEvent | null,
  end: End,
): Measure {
  const steps = track(timeline, null, 'partner-ready');
  if (steps.length === 0 || isUnbroken(steps, start, end.time, 'yes')) return notObserved;
  if (ready === null) return censored(between(start, exactly(Math.max(end.time, start.time))));
  return measured(between(start, ready));
}

function evidenceOf(
  timeline: PairTimeline,
  start: TimelineEvent,
  ready: TimelineEvent | null,
  held: TimelineEvent | null,
): NonEmpty<SourceLine> {
  if (ready === null) return uniqueLines([...linesOf(start), ...endLines(timeline).slice(-1)]);
  return held === null ? linesOfAll([start, ready]) : linesOfAll([start, ready, held]);
}
