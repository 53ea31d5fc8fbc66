import { exactly } from '../timeline/durations.ts';
import { endLines, linesOf } from '../timeline/evidence.ts';
import { stepAt, track, valueAt } from '../timeline/tracks.ts';
import {
  type Condition,
  type Instant,
  type NonEmpty,
  type OpenSwap,
  type SourceLine,
  sayDuration,
  type TimelineEvent,
} from '../vocabulary.ts';
import { type HalfInWork, procedure } from './procedure.ts';
import { limitSeconds as limits } from './table.ts';

/** What a swap waits for where the log ends: a step, of a half or of the pair, with its limit. */
interface Wait {
  readonly since: Instant;
  readonly evidence: NonEmpty<SourceLine>;
  readonly id: OpenSwap['awaits'];
  readonly half: string | null;
  readonly limitSeconds: number;
  readonly says: string;
}

/** A swap is open for so long after its last step, no matter what it waits for, in milliseconds. Source: design.md, section 5. */
const lastStepMs = 900_000;

/**
 * What a swap that is under way waits for, with the conditions that are met and those that are not; `null` where nothing is
 * waited for any more, or was for longer than its limit and longer than a quarter of an hour after the last step. `works` are
 * the halves in work in their order, `settledAt` when the last of them settled. Source: design.md, section 5.
 */
export function openSwap(
  works: NonEmpty<HalfInWork>,
  settledAt: number | null,
  planned: readonly string[],
): OpenSwap | null {
  const { facts, at } = works[0];
  const waits = waitsOf(works, settledAt, planned);
  const next = waits[0];
  const recent = lastStep(facts, at);
  const isRecent = recent !== null && at - recent.time < lastStepMs;
  if (next === undefined) {
    // Nothing is left to wait for: a step that came just now may still be followed by another.
    if (!isRecent || recent === null) return null;
    const evidence = endLines(facts.timeline);
    const limitSeconds = lastStepMs / 1000;
    return asOpen(
      { id: 'soak', half: null, limitSeconds, says: quiet, since: recent, evidence },
      works,
      waits,
    );
  }
  const isWithin = (at - next.since.earliest) / 1000 < next.limitSeconds;
  return isWithin || isRecent ? asOpen(next, works, waits) : null;
}

const steps: ReadonlySet<string> = new Set([
  'removed',
  'inserted',
  'restart',
  'reflash-start',
  'reflash-end',
]);
const soaking = 'a ready partner without a break for 30 minutes';
const quiet = '15 minutes without a further step';

/** The last step up to an instant; `null` without one. */
function lastStep({ timeline, switchovers }: HalfInWork['facts'], at: number): Instant | null {
  const moved = timeline.events.filter((e) => steps.has(e.signal));
  const all = [...moved, ...switchovers.map((s) => s.at)].filter((step) => step.time <= at);
  return all.reduce<Instant | null>((last, { time, earliest }) => {
    return last === null || time >= last.time ? { time, earliest } : last;
  }, null);
}

const soakMs = limits.soak * 1000;

/** Everything that is waited for, what comes first before what follows it. */
function waitsOf(
  works: NonEmpty<HalfInWork>,
  settledAt: number | null,
  planned: readonly string[],
): readonly Wait[] {
  // The half that was taken out last is in work.
  const ofHalves = works
    .toReversed()
    .flatMap((work, index) => (index > 0 && isDoneWith(work) ? [] : waitOf(work)));
  if (ofHalves.length > 0) return ofHalves;
  const { facts, at } = works[0];
  const partner = stepAt(track(facts.timeline, null, 'partner-ready'), at);
  if (settledAt !== null && at - settledAt < soakMs && partner?.value === 'no' && partner.time > settledAt)
    return [readyAgain(partner)];
  const from = Math.max(settledAt ?? 0, partner?.value === 'yes' ? partner.time : 0);
  if (from === 0) return [];
  const since = exactly(from);
  const evidence = endLines(facts.timeline);
  const second = secondHalf(works, planned);
  if (second !== null) {
    const says = `the same work on half ${second}`;
    return [{ id: 'second-half', half: second, limitSeconds: limits['second-half'], says, since, evidence }];
  }
  if (at - (settledAt ?? from) >= soakMs) return [];
  return [{ id: 'soak', half: null, limitSeconds: limits.soak, says: soaking, since, evidence }];
}

/** A half before the one in work waits for nothing once it has settled, or may have: what the logs leave open no wait will tell. */
function isDoneWith({ bringUp }: HalfInWork): boolean {
  return bringUp !== null && bringUp.mayHaveSettledAt !== null;
}

/** The first step of a half that is not done. */
function waitOf(work: HalfInWork): readonly Wait[] {
  const { half } = work.change;
  for (const { id, limitSeconds, says, stateOf } of procedure) {
    const state = stateOf(work);
    if (state.kind !== 'waiting') continue;
    return [{ since: state.since, evidence: state.evidence, id, half, limitSeconds, says: says(half) }];
  }
  return [];
}

/** A partner that was lost after the work was done must come back. */
function readyAgain(lost: TimelineEvent): Wait {
  const since = { time: lost.time, earliest: lost.earliest };
  const says = 'the partner to be ready again';
  return { id: 'ready', half: null, limitSeconds: limits.ready, says, since, evidence: linesOf(lost) };
}

/** The half that is still to be replaced: the plan says so, or without a plan the models differ; `null` where none is. */
export function secondHalf(works: NonEmpty<HalfInWork>, planned: readonly string[]): string | null {
  const { facts, at } = works[0];
  const { timeline } = facts;
  const left = timeline.halves.filter((half) => !works.some((w) => w.change.half === half));
  if (planned.length > 0) return left.find((half) => planned.includes(half)) ?? null;
  const models = timeline.halves.map((half) => valueAt(track(timeline, half, 'model'), at));
  return models.every((m) => m !== null) && new Set(models).size > 1 ? (left[0] ?? null) : null;
}

function asOpen(next: Wait, works: NonEmpty<HalfInWork>, waits: readonly Wait[]): OpenSwap {
  const { at } = works[0];
  const conditions = works.flatMap((work, index) => {
    const isOver = index < works.length - 1 && isDoneWith(work);
    return conditionsOf(work).filter((c) => c.status === 'met' || !isOver);
  });
  const isLate = (at - next.since.time) / 1000 > next.limitSeconds;
  return {
    awaits: next.id,
    half: next.half,
    says: next.says,
    since: { time: next.since.time, earliest: next.since.earliest },
    limitSeconds: next.limitSeconds,
    holdPoint: isLate || conditions.some((c) => c.status === 'stop') ? 'stop' : 'waiting',
    conditions: [
      ...conditions,
      ...waits.filter((w) => w.half === null || w.id === 'second-half').map((w) => conditionOf(w, at)),
    ],
    statement: `Waiting for ${next.says}${soFar(next, at)}.`,
  };
}

/** How long something was waited for; of time that must pass, how much of it has. */
function soFar({ id, since, limitSeconds }: Wait, at: number): string {
  const watched = sayDuration(Math.max(0, at - since.time) / 1000);
  return id === 'soak'
    ? `: ${watched} so far`
    : `: ${watched} so far, the limit is ${sayDuration(limitSeconds)}`;
}

/** The steps of the work on one half: done ones are met, the first that is not done waits, what follows it is not reached yet. */
export function conditionsOf(work: HalfInWork): readonly Condition[] {
  const { change, at } = work;
  const states = procedure.map((step) => ({ step, state: step.stateOf(work) }));
  const place = states.findIndex(({ state }) => state.kind === 'waiting');
  return states.slice(0, place < 0 ? states.length : place + 1).flatMap(({ step, state }): Condition[] => {
    if (state.kind === 'none') return [];
    const { id, limitSeconds } = step;
    const { half } = change;
    const { since, evidence } = state;
    return state.kind === 'done'
      ? [{ id, half, status: 'met', statement: step.saysDone(half), evidence }]
      : [conditionOf({ id, half, since, limitSeconds, says: step.says(half), evidence }, at)];
  });
}

function conditionOf({ id, half, since, limitSeconds, says, evidence }: Wait, at: number): Condition {
  const seconds = Math.max(0, at - since.time) / 1000;
  const status = seconds > limitSeconds ? 'stop' : 'waiting';
  const waiting = `Waiting for ${says}${soFar({ id, half, since, limitSeconds, says, evidence }, at)}.`;
  const late = `Stop and call for support: waited ${sayDuration(seconds)} for ${says}; the limit is ${sayDuration(limitSeconds)}.`;
  return { id, half, status, statement: status === 'stop' ? late : waiting, evidence };
}
