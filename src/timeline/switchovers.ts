import type {
  Interval,
  NonEmpty,
  PairTimeline,
  SourceLine,
  Switchover,
  TimelineEvent,
} from '../vocabulary.ts';
import { between } from './durations.ts';
import { linesOfAll } from './evidence.ts';
import { readinessOf } from './readiness.ts';
import type { TimelineRules } from './rules.ts';
import { countUntil, stepAt, track } from './tracks.ts';

/**
 * Every switchover of a pair in the order of time, judged at its earliest instant. `logsCommands` says whether any input
 * ever logs a command. Source: design.md, section 4, Switchovers.
 */
export function switchoversOf(
  timeline: PairTimeline,
  logsCommands: boolean,
  rules: TimelineRules,
): readonly Switchover[] {
  const all = timeline.events.filter((e) => e.signal === 'switchover-command');
  const widest = all.reduce((most, e) => Math.max(most, e.time - e.earliest), 0);
  return takings(timeline).map(({ left, taken }) => {
    const at = { time: left.time, earliest: left.earliest };
    const commands = all
      .slice(
        countUntil(all, left.earliest - rules.commandMs, 'before'),
        countUntil(all, left.time + left.resolution + widest),
      )
      .filter((e) => isCommandOf(e, left, rules));
    const ready = readinessAt(timeline, left);
    const gap = between(left, taken);
    return {
      pair: timeline.pair,
      at,
      fromHalf: left.half ?? '',
      toHalf: taken.half ?? '',
      commanded: logsCommands ? commands.length > 0 : null,
      partnerReady: ready === undefined ? null : ready.value === 'yes',
      readySeconds:
        ready === undefined || ready.value !== 'yes' || ready.initial
          ? null
          : Math.max(0, at.earliest - ready.time) / 1000,
      firmwareMatched: firmwareMatched(timeline, at.earliest),
      gapSeconds: { low: gap.low, high: gap.high },
      evidence: evidenceOf(left, taken, commands, ready),
    };
  });
}

/** Pairs each leaving of the active role with the other half's taking it. */
function takings(
  timeline: PairTimeline,
): readonly { readonly left: TimelineEvent; readonly taken: TimelineEvent }[] {
  const roles = timeline.events.filter((e) => e.signal === 'role');
  const active = roles.filter((e) => e.value === 'active');
  const free = roles.filter((e) => e.before === 'active' && e.value !== 'active' && !e.initial);
  const pairs: { left: TimelineEvent; taken: TimelineEvent }[] = [];
  for (const taken of active.filter((e) => !e.initial)) {
    const place = nearestOfOther(free, taken);
    const left = free[place];
    if (left === undefined || !isNextTaking(active, left, taken)) continue;
    pairs.push({ left, taken });
    free.splice(place, 1);
  }
  return pairs.sort((a, b) => a.left.time - b.left.time);
}

/** Where the event of another half stands that is nearest in time, of two the earlier; -1 without any. */
function nearestOfOther(events: readonly TimelineEvent[], { half, time }: TimelineEvent): number {
  const middle = countUntil(events, time);
  let before = middle - 1;
  while (events[before]?.half === half) before -= 1;
  // Of several at one instant the first.
  while (before > 0 && events[before - 1]?.time === events[before]?.time && events[before - 1]?.half !== half)
    before -= 1;
  let after = middle;
  while (events[after]?.half === half) after += 1;
  const [first, second] = [events[before], events[after]];
  if (first === undefined) return second === undefined ? -1 : after;
  return second === undefined || time - first.time <= second.time - time ? before : after;
}

/** No half took the active role between the leaving and this taking. */
function isNextTaking(active: readonly TimelineEvent[], left: TimelineEvent, taken: TimelineEvent): boolean {
  const from = Math.min(left.time, taken.time);
  const to = Math.max(left.time, taken.time);
  return countUntil(active, to, 'before') <= countUntil(active, from);
}

/** A command comes up to half a minute before the switchover's earliest instant, or within its bounds. */
function isCommandOf(command: TimelineEvent, left: TimelineEvent, rules: TimelineRules): boolean {
  return command.time >= left.earliest - rules.commandMs && command.earliest <= left.time + left.resolution;
}

function readinessAt(timeline: PairTimeline, left: TimelineEvent): TimelineEvent | undefined {
  const { signal, steps } = readinessOf(timeline);
  if (signal !== 'partner-ready') return undefined;
  // Within one stamp the switchover comes before the loss it brings.
  const isPoint = left.earliest === left.time;
  let place = countUntil(steps, left.earliest) - 1;
  while (isPoint && steps[place]?.time === left.earliest && steps[place]?.value === 'no') place -= 1;
  return steps[place];
}

function firmwareMatched(timeline: PairTimeline, time: number): boolean | null {
  const [a, b] = timeline.halves.map(
    (half) => stepAt(track(timeline, half, 'firmware'), time)?.value ?? null,
  );
  return a === null || b === null || a === undefined || b === undefined ? null : a === b;
}

function evidenceOf(
  left: TimelineEvent,
  taken: TimelineEvent,
  commands: readonly TimelineEvent[],
  ready: TimelineEvent | undefined,
): NonEmpty<SourceLine> {
  return linesOfAll([left, taken, ...commands, ...(ready === undefined ? [] : [ready])]);
}

/** A span in which both halves were active, or neither. */
export interface Conflict extends Interval {
  readonly kind: 'two-active' | 'none-active';
  readonly low: number;
  readonly seconds: number;
  readonly high: number;
  /** Spacing of the coarsest poll that shows it, in seconds; 0 for journals. */
  readonly spacingSeconds: number;
  readonly evidence: NonEmpty<SourceLine>;
}

/** Spans with both halves active or neither, from the first instant at which both roles are known. */
export function conflictsOf(timeline: PairTimeline): readonly Conflict[] {
  const [first, second] = timeline.halves.map((half) => track(timeline, half, 'role'));
  if (first === undefined || second === undefined) return [];
  const moments = [...first, ...second].sort((a, b) => a.time - b.time || a.earliest - b.earliest);
  const conflicts: Conflict[] = [];
  let open: { kind: Conflict['kind']; start: TimelineEvent } | null = null;
  for (const [index, moment] of moments.entries()) {
    if (moments[index + 1]?.time === moment.time) continue;
    const kind = conflictAt(stepAt(first, moment.time), stepAt(second, moment.time));
    if (open !== null && kind !== open.kind) {
      conflicts.push(conflictOf(timeline, open.kind, open.start, moment));
      open = null;
    }
    if (kind !== null && open === null) open = { kind, start: moment };
  }
  return open === null ? conflicts : [...conflicts, conflictOf(timeline, open.kind, open.start, null)];
}

function conflictAt(a: TimelineEvent | undefined, b: TimelineEvent | undefined): Conflict['kind'] | null {
  if (a === undefined || b === undefined) return null;
  if (a.value === 'active' && b.value === 'active') return 'two-active';
  return a.value !== 'active' && b.value !== 'active' ? 'none-active' : null;
}

function conflictOf(
  timeline: PairTimeline,
  kind: Conflict['kind'],
  start: TimelineEvent,
  end: TimelineEvent | null,
): Conflict {
  const to = end ?? { time: timeline.to, earliest: timeline.to, resolution: 0 };
  const files = new Set([...start.sources, ...(end?.sources ?? [])].map((s) => s.file));
  const spacings = timeline.coverage.filter((c) => files.has(c.file)).map((c) => c.stream.spacing);
  return {
    kind,
    from: start.time,
    to: to.time,
    ...between(start, to),
    spacingSeconds: Math.max(0, ...spacings) / 1000,
    evidence: end === null ? linesOfAll([start]) : linesOfAll([start, end]),
  };
}
