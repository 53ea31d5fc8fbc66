import { linesOf } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import type { ModuleChange } from '../timeline/module-changes.ts';
import { countUntil, firstFrom, stepAt, track, valueAt } from '../timeline/tracks.ts';
import type {
  BringUp,
  Instant,
  NonEmpty,
  PlannedModule,
  ProcedureStepId,
  SourceLine,
  TimelineEvent,
} from '../vocabulary.ts';
import { limitSeconds } from './table.ts';

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

/** How a step stands: done, waited for since an instant, or without a place in this work. */
export type StepState =
  | { readonly kind: 'done' | 'waiting'; readonly since: Instant; readonly evidence: NonEmpty<SourceLine> }
  | { readonly kind: 'none' };

/** One step of the work on a half. Each is waited for once the one before is done. */
export interface ProcedureStep {
  readonly id: ProcedureStepId;
  /** Longer than this it does not take where all is well. */
  readonly limitSeconds: number;
  /** What is waited for, as the end of a sentence. */
  says(half: string): string;
  /** What is so once it is done, as a sentence. */
  saysDone(half: string): string;
  stateOf(work: HalfInWork): StepState;
}

/** The steps of the work on one half that logs can tell of, in their order: how each of them stands. */
export const procedure: readonly ProcedureStep[] = [
  {
    id: 'in',
    limitSeconds: limitSeconds.in,
    says: (half) => `a module in half ${half}`,
    saysDone: (half) => `A module is in half ${half}.`,
    stateOf: ({ change }) =>
      change.inserted === null ? state('waiting', change.removed) : state('done', change.inserted),
  },
  {
    id: 'identified',
    limitSeconds: limitSeconds.identified,
    says: (half) => `the new module in half ${half} to report its identity`,
    saysDone: (half) => `The new module in half ${half} reports its identity.`,
    stateOf(work) {
      const word = identified(work);
      if (word !== null) return state('done', word);
      return work.change.inserted === null ? none : state('waiting', work.change.inserted);
    },
  },
  {
    id: 'reflash',
    limitSeconds: limitSeconds.reflash,
    says: (half) => `half ${half} to run the right firmware`,
    saysDone: (half) => `Half ${half} runs the right firmware.`,
    stateOf: (work) => reflashing(work) ?? firmwareOf(work),
  },
  {
    id: 'ready',
    limitSeconds: limitSeconds.ready,
    says: (half) => `half ${half} to be ready`,
    saysDone: (half) => `Half ${half} is the ready partner.`,
    stateOf({ bringUp, facts, at }) {
      if (bringUp === null || bringUp.held.outcome === 'not-observed') return none;
      const now = stepAt(track(facts.timeline, null, 'partner-ready'), at);
      if (now?.value === 'yes' && now.time >= bringUp.start.earliest) return state('done', now);
      if (bringUp.settled !== null)
        return { kind: 'done', since: bringUp.settled, evidence: bringUp.evidence };
      return { kind: 'waiting', since: bringUp.start, evidence: bringUp.evidence };
    },
  },
  {
    id: 'steady',
    limitSeconds: limitSeconds.steady,
    says: (half) => `the light of half ${half} to be steady`,
    saysDone: (half) => `The light of half ${half} is steady.`,
    stateOf({ bringUp, facts, change: { half }, at }) {
      if (bringUp === null || bringUp.light.outcome === 'not-observed') return none;
      const now = stepAt(track(facts.timeline, half, 'light'), at);
      if (now?.value === 'steady' && now.time >= bringUp.start.earliest) return state('done', now);
      const kind = bringUp.light.censored ? 'waiting' : 'done';
      return { kind, since: bringUp.start, evidence: bringUp.lightEvidence };
    },
  },
];

const none: StepState = { kind: 'none' };

function state(kind: 'done' | 'waiting', event: TimelineEvent): StepState {
  return { kind, since: { time: event.time, earliest: event.earliest }, evidence: linesOf(event) };
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

/** A reflash that was logged to start, and not to end; `null` without one. */
function reflashing({ facts, change: { half, inserted } }: HalfInWork): StepState | null {
  const { timeline } = facts;
  const start = track(timeline, half, 'reflash-start').at(-1);
  if (inserted === null || start === undefined || start.time < inserted.earliest) return null;
  const end = track(timeline, half, 'reflash-end').find((e) => e.time > start.time);
  return end === undefined ? state('waiting', start) : null;
}

/** Whether the new module runs the firmware that was planned, or that of the other half where nothing was. */
function firmwareOf(work: HalfInWork): StepState {
  const { facts, change, plan, at } = work;
  const { timeline } = facts;
  const other = timeline.halves.find((half) => half !== change.half);
  const own = stepAt(track(timeline, change.half, 'firmware'), at);
  const wanted =
    plan?.firmware ?? (other === undefined ? null : valueAt(track(timeline, other, 'firmware'), at));
  const since = identified(work);
  if (own === undefined || own.value === null || wanted === null || since === null) return none;
  return own.value === wanted ? state('done', own) : state('waiting', since);
}
