import { linesOf } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import type { ModuleChange } from '../timeline/module-changes.ts';
import { countUntil, firstFrom, track, valueAt } from '../timeline/tracks.ts';
import type {
  BringUp,
  Instant,
  NonEmpty,
  PlannedModule,
  ProcedureStepId,
  SourceLine,
  TimelineEvent,
} from '../vocabulary.ts';

/** One half in work, as the log shows it up to an instant. */
export interface HalfInWork {
  readonly facts: PairFacts;
  readonly change: ModuleChange;
  /** The last bring-up of its new module; `null` without one. */
  readonly bringUp: BringUp | null;
  /** What was planned for it, if a plan was given. */
  readonly plan: PlannedModule | undefined;
  /** The end of what was read. */
  readonly at: number;
}

/** What a step waits for, from when on. */
export interface Awaited {
  readonly since: Instant;
  readonly evidence: NonEmpty<SourceLine>;
}

/** One step of the work on a half. Each is waited for once the one before is done. */
export interface ProcedureStep {
  readonly id: ProcedureStepId;
  /** Longer than this it does not take where all is well. */
  readonly limitSeconds: number;
  /** What is waited for, as the end of a sentence. */
  says(half: string): string;
  /** `null` where the step is done, or has no place in this work. */
  awaited(work: HalfInWork): Awaited | null;
}

const minute = 60;

/**
 * The steps of the work on one half, in their order. The limits are those of design.md, section 5; five minutes for the light
 * are common practice, no source.
 */
export const procedure: readonly ProcedureStep[] = [
  {
    id: 'in',
    limitSeconds: 15 * minute,
    says: (half) => `a module in half ${half}`,
    awaited: ({ change }) => (change.inserted === null ? from(change.removed) : null),
  },
  {
    id: 'identified',
    limitSeconds: 15 * minute,
    says: (half) => `the new module of half ${half} to say what it is`,
    awaited: (work) =>
      work.change.inserted === null || identified(work) !== null ? null : from(work.change.inserted),
  },
  {
    id: 'reflash',
    limitSeconds: 15 * minute,
    says: (half) => `half ${half} to come to its firmware`,
    awaited: (work) => reflashing(work) ?? differing(work),
  },
  {
    id: 'ready',
    limitSeconds: 15 * minute,
    says: (half) => `half ${half} to be ready and to stay so`,
    awaited: ({ bringUp }) =>
      bringUp === null || bringUp.settled !== null || bringUp.held.outcome === 'not-observed'
        ? null
        : { since: bringUp.start, evidence: bringUp.evidence },
  },
  {
    id: 'steady',
    limitSeconds: 5 * minute,
    says: (half) => `the light of half ${half} to be steady`,
    awaited: ({ bringUp }) =>
      bringUp === null || bringUp.light.outcome === 'not-observed' || !bringUp.light.censored
        ? null
        : { since: bringUp.start, evidence: bringUp.lightEvidence },
  },
];

/** The time within which the second half follows the first, and the one for which a ready partner is watched. */
export const secondHalfSeconds = 24 * 60 * minute;
export const soakSeconds = 30 * minute;

function from(event: TimelineEvent): Awaited {
  return { since: { time: event.time, earliest: event.earliest }, evidence: linesOf(event) };
}

/** The first word of the new module: what it is, or the role it takes. */
function identified({ facts, change: { half, inserted, removed } }: HalfInWork): TimelineEvent | null {
  const { timeline } = facts;
  if (inserted === null) return null;
  const words = (['serial', 'model', 'firmware', 'role'] as const).flatMap((signal) => {
    const steps = track(timeline, half, signal);
    const first = firstFrom(
      steps,
      countUntil(steps, removed.earliest),
      (s) => s.time >= removed.time && s.value !== null && s.value !== 'none',
    );
    return first === undefined ? [] : [first];
  });
  return words.sort((a, b) => a.time - b.time)[0] ?? null;
}

/** A reflash that was logged to start, and neither to end nor by the firmware it brought. */
function reflashing({ facts, change: { half, inserted } }: HalfInWork): Awaited | null {
  const { timeline } = facts;
  const start = track(timeline, half, 'reflash-start').at(-1);
  if (inserted === null || start === undefined || start.time < inserted.earliest) return null;
  const isOver = track(timeline, half, 'reflash-end').some((e) => e.time > start.time);
  return isOver ? null : from(start);
}

/** The new module runs other firmware than was planned, or than the other half where nothing was. */
function differing(work: HalfInWork): Awaited | null {
  const { facts, change, plan, at } = work;
  const { timeline } = facts;
  const other = timeline.halves.find((half) => half !== change.half);
  const own = valueAt(track(timeline, change.half, 'firmware'), at);
  const wanted =
    plan?.firmware ?? (other === undefined ? null : valueAt(track(timeline, other, 'firmware'), at));
  const since = identified(work);
  return own === null || wanted === null || own === wanted || since === null ? null : from(since);
}
