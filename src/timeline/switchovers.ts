import type { PairTimeline, Switchover, TimelineEvent } from '../vocabulary.ts';
import { observesCommandAt } from './commands.ts';
import { between } from './durations.ts';
import { eventWith } from './event-with.ts';
import { linesOfAll } from './evidence.ts';
import { unobservedIn } from './observation.ts';
import { readinessOf } from './readiness.ts';
import type { TimelineRules } from './rules.ts';
import { countUntil, mayChange, stepAt, track } from './tracks.ts';

/** The roles exchanged: one half left the active role, the other took it. */
interface Exchanged {
  readonly left: TimelineEvent;
  /** `null` where a log says that they exchanged, and nothing says which half is which. */
  readonly taken: TimelineEvent | null;
}

/**
 * Every switchover of a pair in the order of time, judged at its earliest instant. `logsCommands` are the files in which a
 * command is ever logged. Source: design.md, sections 2 and 4, Switchovers.
 */
export function switchoversOf(
  timeline: PairTimeline,
  logsCommands: ReadonlySet<string>,
  rules: TimelineRules,
): readonly Switchover[] {
  const commands = timeline.events.filter((e) => e.signal === 'switchover-command');
  const widest = commands.reduce((most, e) => Math.max(most, e.time - e.earliest), 0);
  return exchangesOf(timeline, rules).map(({ left, taken }) => {
    const own = commands
      .slice(
        countUntil(commands, left.earliest - rules.commandMs, 'before'),
        countUntil(commands, left.time + left.resolution + widest),
      )
      .filter((e) => isCommandOf(e, left, rules));
    const { events, ...ready } = readinessAt(timeline, left);
    const isObserved = observesCommandAt(timeline, logsCommands, left.earliest - rules.commandMs, left.time);
    return {
      pair: timeline.pair,
      at: { time: left.time, earliest: left.earliest },
      fromHalf: taken === null ? null : left.half,
      toHalf: taken?.half ?? null,
      commanded: own.length > 0 ? true : isObserved ? false : null,
      ...ready,
      firmwareMatched: firmwareMatched(timeline, left),
      gapSeconds: gapOf(left, taken),
      evidence: linesOfAll([left, ...(taken === null ? [] : [taken]), ...own, ...events]),
    };
  });
}

/** Time between the leaving and the taking; nothing is known of it where one line tells of both, 0 where both were active. */
function gapOf(left: TimelineEvent, taken: TimelineEvent | null): Switchover['gapSeconds'] {
  if (taken === null || isOneLine(left, taken)) return { low: null, high: null };
  const { low, high } = between(left, taken);
  return { low, high };
}

function isOneLine(left: TimelineEvent, taken: TimelineEvent): boolean {
  const [a, b] = [left.sources[0], taken.sources[0]];
  return left.earliest === left.time && a.file === b.file && a.line === b.line;
}

/** What stated roles exchanged, and what is logged as a switchover besides. */
function exchangesOf(timeline: PairTimeline, rules: TimelineRules): readonly Exchanged[] {
  const exchanged = takings(timeline, rules);
  const logged = track(timeline, null, 'switchover').filter(
    (s) => !exchanged.some(({ left, taken }) => isNear(left, s, rules) || isNear(taken, s, rules)),
  );
  const others = logged.map((left): Exchanged => ({ left, taken: null }));
  const finer = exchanged.map(({ left, taken }) => ({ left: atLogged(left, timeline), taken }));
  return [...finer, ...others].sort((a, b) => a.left.time - b.left.time);
}

function isNear(a: TimelineEvent, b: TimelineEvent, rules: TimelineRules): boolean {
  return a.earliest - rules.lagMs <= b.time && b.earliest - rules.lagMs <= a.time;
}

/** A leaving that a poll saw, at the instant at which a log says that the roles were exchanged, if it lies within its bounds. */
function atLogged(left: TimelineEvent, timeline: PairTimeline): TimelineEvent {
  const logged = track(timeline, null, 'switchover');
  const found = logged[countUntil(logged, left.earliest)];
  if (found === undefined || found.time > left.time || found.time !== found.earliest) return left;
  const { time, earliest, resolution, sources } = found;
  return eventWith(left, { time, earliest, resolution, sources: [...left.sources, ...sources] });
}

/**
 * Pairs each leaving of the active role with the other half's taking it, however long between. A half that takes it again
 * itself has not passed it on. Roles that are only concluded exchange nothing.
 */
function takings(
  timeline: PairTimeline,
  rules: TimelineRules,
): readonly { readonly left: TimelineEvent; readonly taken: TimelineEvent }[] {
  const steps = timeline.events.filter((e) => e.signal === 'role' && !e.concluded);
  steps.sort((a, b) => a.time - b.time || Number(a.value === 'active') - Number(b.value === 'active'));
  const found: { left: TimelineEvent; taken: TimelineEvent }[] = [];
  const active = new Set<string | null>();
  let left: TimelineEvent | null = null;
  let taken: TimelineEvent | null = null;
  for (let index = 0; ; index += 1) {
    const step = inTurn(steps, index, taken);
    if (step === undefined) return found;
    const isTaking = step.value === 'active';
    const open = isTaking ? left : taken;
    if (!step.initial && (isTaking || leaves(step, timeline, rules))) {
      if (open !== null && open.half !== step.half && isMatch(open, step, rules)) {
        found.push(isTaking ? { left: open, taken: step } : { left: step, taken: open });
        left = null;
        taken = null;
      } else if (isTaking) {
        // Taken again by the half that had left it, or while the other still holds it.
        taken = left?.half === step.half ? null : step;
        left = null;
      } else {
        left = active.size > (active.has(step.half) ? 1 : 0) ? null : step;
        if (taken?.half === step.half) taken = null;
      }
    }
    if (isTaking) active.add(step.half);
    else active.delete(step.half);
  }
}

/** Of two leavings at one stamp that of the half which had not just taken the role is looked at first, no matter what it is called. */
function inTurn(
  steps: TimelineEvent[],
  index: number,
  taken: TimelineEvent | null,
): TimelineEvent | undefined {
  const [step, next] = [steps[index], steps[index + 1]];
  if (step === undefined || next === undefined || next.time !== step.time || next.value === 'active')
    return step;
  if (taken?.half !== step.half || next.half === step.half) return step;
  steps.splice(index, 2, next, step);
  return next;
}

/** A half leaves the active role that it is known to hold; a first word on it in mid-log tells of a change too. */
function leaves(step: TimelineEvent, timeline: PairTimeline, rules: TimelineRules): boolean {
  return step.before === 'active' || isFirstWord(step, timeline, rules);
}

function isFirstWord({ before, time }: TimelineEvent, timeline: PairTimeline, rules: TimelineRules): boolean {
  return before === null && time - timeline.from > rules.lagMs;
}

/** Where nothing says what one of them was before, only what comes close together is one exchange. */
function isMatch(a: TimelineEvent, b: TimelineEvent, rules: TimelineRules): boolean {
  return (a.before !== null && b.before !== null) || isNear(a, b, rules);
}

/** A command comes up to half a minute before the switchover's earliest instant, or within its bounds. */
function isCommandOf(command: TimelineEvent, left: TimelineEvent, rules: TimelineRules): boolean {
  return command.time >= left.earliest - rules.commandMs && command.earliest <= left.time + left.resolution;
}

/** Whether the partner was ready at the switchover's earliest instant and for how long; not known where that was not observed. */
function readinessAt(
  timeline: PairTimeline,
  left: TimelineEvent,
): Pick<Switchover, 'partnerReady' | 'readySeconds'> & { readonly events: readonly TimelineEvent[] } {
  const unknown = { partnerReady: null, readySeconds: null, events: [] };
  const { signal, steps } = readinessOf(timeline);
  if (signal !== 'partner-ready') return unknown;
  // Within one stamp the switchover comes before the loss it brings.
  const isPoint = left.earliest === left.time;
  let place = countUntil(steps, left.earliest) - 1;
  while (isPoint && steps[place]?.time === left.earliest && steps[place]?.value === 'no') place -= 1;
  const ready = steps[place];
  if (ready === undefined || ready.value === null) return unknown;
  const unseen = unobservedIn(timeline, null, 'partner-ready', ready.time, left.earliest).at(-1);
  // Unobserved up to the switchover: it may have been lost.
  if (unseen !== undefined && unseen.to >= left.earliest && unseen.from < left.earliest) return unknown;
  const since = unseen === undefined ? (ready.initial ? null : ready.time) : unseen.to;
  return {
    partnerReady: ready.value === 'yes',
    readySeconds: ready.value !== 'yes' || since === null ? null : Math.max(0, left.earliest - since) / 1000,
    events: [ready],
  };
}

/** `null` where the firmware of a half is not known, or may have changed within the bounds of the switchover. */
function firmwareMatched(timeline: PairTimeline, { time, earliest }: TimelineEvent): boolean | null {
  const [a, b] = timeline.halves.map((half) => {
    const steps = track(timeline, half, 'firmware');
    return mayChange(steps, earliest, time) ? null : (stepAt(steps, earliest)?.value ?? null);
  });
  return a === null || b === null || a === undefined || b === undefined ? null : a === b;
}
