import type { BringUp, BringUpCause, Instant, Measure, NonEmpty, PairTimeline, SourceLine, TimelineEvent } from '../vocabulary.ts';
import { between, censored, exactly, judge, measured, notObserved } from './durations.ts';
import { endLines, linesOf, linesOfAll, uniqueLines } from './readiness.ts';
import type { TimelineRules } from './rules.ts';
import { spells, stepAt, track } from './tracks.ts';

const causes: Readonly<Record<string, BringUpCause>> = { inserted: 'inserted', restart: 'restart', 'reflash-end': 'reflash' };

interface Start {
  readonly half: string;
  readonly cause: BringUpCause;
  /** The event that began it; for the active half the one that made it standby again. */
  readonly event: TimelineEvent;
}

/** Where the watch of a bring-up ends, and why. */
interface End {
  readonly time: number;
  readonly why: 'next-start' | 'switchover' | 'removed' | 'log-end';
}

/**
 * Every bring-up of a pair in the order of their starts, with sync time and stable light and their bounds.
 * Source: design.md, section 4, Bring-ups and Stable light.
 */
export function bringUpsOf(timeline: PairTimeline, rules: TimelineRules): readonly BringUp[] {
  const starts = timeline.events.flatMap((e) => startOf(timeline, e));
  return starts.map((start) => bringUpOf(timeline, start, starts, rules));
}

function startOf(timeline: PairTimeline, event: TimelineEvent): readonly Start[] {
  const cause = causes[event.signal];
  const half = event.half;
  if (cause === undefined || half === null) return [];
  const roles = track(timeline, half, 'role');
  if (stepAt(roles, event.time)?.value !== 'active') return [{ half, cause, event }];
  const standby = roles.find((step) => step.time > event.time && step.value === 'standby');
  return standby === undefined ? [] : [{ half, cause, event: standby }];
}

function bringUpOf(
  timeline: PairTimeline,
  start: Start,
  starts: readonly Start[],
  rules: TimelineRules,
): BringUp {
  const { half, cause, event } = start;
  const end = endOf(timeline, start, starts);
  const readies = readiesOf(timeline, event, end, rules);
  const first = readies[0] ?? null;
  const held = readies.find((r) => r.held) ?? null;
  const identity = (signal: 'firmware' | 'model' | 'serial'): string | null => {
    const steps = track(timeline, half, signal);
    const during = steps.find((s) => s.value !== null && s.time >= event.earliest && s.time <= end.time);
    return (stepAt(steps, event.time)?.value ?? during?.value) ?? null;
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
    outcome: outcomeOf(held !== null, readies.some((r) => r.lost), end),
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

function endOf(timeline: PairTimeline, { half, event }: Start, starts: readonly Start[]): End {
  const after = timeline.events.filter((e) => e.half === half && e.time > event.time);
  const next = starts.find((s) => s.half === half && s.event.time > event.time);
  const removed = after.find((e) => e.signal === 'removed');
  const active = after.find((e) => e.signal === 'role' && e.value === 'active');
  const ends: End[] = [{ time: timeline.to, why: 'log-end' }];
  if (active !== undefined) ends.unshift({ time: active.time, why: 'switchover' });
  if (removed !== undefined) ends.unshift({ time: removed.time, why: 'removed' });
  if (next !== undefined) {
    const reflash = after.find((e) => e.signal === 'reflash-start' && e.time <= next.event.time);
    const failed = after.find((e) => e.signal === 'sync-failed' && e.time <= next.event.time);
    const begun = next.cause === 'reflash' ? (reflash ?? implicitReflash(timeline, event, next.event)) : next.event;
    ends.unshift({ time: Math.min(begun.time, failed?.time ?? begun.time), why: 'next-start' });
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

function readiesOf(timeline: PairTimeline, start: TimelineEvent, end: End, rules: TimelineRules): readonly Ready[] {
  return spells(track(timeline, null, 'partner-ready'), 'yes')
    .filter(({ start: step }) => step.time > start.earliest && step.time >= start.time && step.time <= end.time)
    .map(({ start: step, end: loss }) => {
      const until = loss === null ? timeline.to : loss.earliest;
      // A reflash or removal that ends the watch may come before the hold time is over: then it has not held.
      const held = Math.min(until, holdLimit(end, timeline.to)) - step.time >= rules.holdMs;
      return { step, held, lost: !held && loss !== null && loss.time < end.time };
    });
}

/** Until when a state of this bring-up can have held: the log's end, or whatever ended the watch before. */
function holdLimit(end: End, logEnd: number): number {
  return end.why === 'log-end' ? logEnd : end.time;
}

function outcomeOf(settled: boolean, lost: boolean, end: End): BringUp['outcome'] {
  if (settled) return 'settled';
  if (lost) return 'lost';
  return end.why === 'next-start' || end.why === 'switchover' ? 'superseded' : 'unfinished';
}

/** A good state that no log saw broken by the start, as between two slow polls: how long it took is not known. */
function isUnbroken(steps: readonly TimelineEvent[], start: TimelineEvent, end: number, good: string): boolean {
  const during = steps.some((s) => s.time > start.earliest && s.time <= end);
  return !during && stepAt(steps, start.earliest)?.value === good;
}

function syncOf(timeline: PairTimeline, start: TimelineEvent, ready: TimelineEvent | null, end: End): Measure {
  const steps = track(timeline, null, 'partner-ready');
  if (steps.length === 0 || isUnbroken(steps, start, end.time, 'yes')) return notObserved;
  if (ready === null) return censored(between(start, exactly(Math.max(end.time, start.time))));
  return measured(between(start, ready));
}

function lightOf(
  timeline: PairTimeline,
  { half, event }: Start,
  end: End,
  rules: TimelineRules,
): { readonly measure: Measure; readonly evidence: NonEmpty<SourceLine> } {
  const steps = track(timeline, half, 'light');
  if (steps.length === 0 || isUnbroken(steps, event, end.time, 'steady')) return { measure: notObserved, evidence: linesOf(event) };
  const steady = steps.find(
    (s, index) => s.value === 'steady' && s.time >= event.time && s.time <= end.time && holds(timeline, half, s, steps[index + 1], end, rules),
  );
  if (steady === undefined) {
    const watched = between(event, exactly(Math.max(end.time, event.time)));
    const outcome = judge(watched.low, null, rules.lightLimitSeconds);
    const last = endLines(timeline);
    const seen = steps.filter((s) => s.time >= event.time && s.time <= end.time).flatMap(linesOf);
    return { measure: { ...censored(watched), outcome }, evidence: uniqueLines([...linesOf(event), ...seen, ...last.slice(-1)]) };
  }
  const duration = between(event, steady);
  const outcome = judge(duration.low, duration.high, rules.lightLimitSeconds);
  return { measure: { ...measured(duration), outcome }, evidence: linesOfAll([event, steady]) };
}

/** A steady light has held if nothing changed it for the hold time, or only that its half became active. */
function holds(
  timeline: PairTimeline,
  half: string,
  steady: TimelineEvent,
  next: TimelineEvent | undefined,
  end: End,
  rules: TimelineRules,
): boolean {
  const until = next === undefined || next.value === 'steady' ? holdLimit(end, timeline.to) : next.earliest;
  if (Math.min(until, holdLimit(end, timeline.to)) - steady.time >= rules.holdMs) return true;
  if (next?.value !== 'off' && end.why !== 'switchover') return false;
  const active = track(timeline, half, 'role').find((s) => s.value === 'active' && s.time > steady.time);
  if (active === undefined) return false;
  return next === undefined || active.earliest <= next.time + rules.belongsMs;
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
