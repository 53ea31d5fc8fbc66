import { observationFor } from '../timeline/observation.ts';
import { type StateAt, stateAt } from '../timeline/state-at.ts';
import type { PairTimeline, Signal, StateSignal, TimelineEvent } from '../vocabulary.ts';

/** What a half, or the pair, reports by now. */
export interface StateNow extends StateAt {
  /** What came after the state was told last, and leaves nothing known of it. */
  readonly since?: TimelineEvent | undefined;
}

/**
 * What a half reports of a signal at an instant, of the module that is in its place and in the role it has. What was read before
 * its module was taken out or put in tells nothing of that module, and roles and lights read before a switchover nothing of those after
 * it; a note may tell of one later than the newest reading. A journal that goes on tells that all stays as it said last.
 */
export function stateNow(timeline: PairTimeline, half: string, signal: StateSignal, time: number): StateNow {
  const state = stateAt(timeline, half, signal, time);
  const since = timeline.events.findLast((e) => isAfresh(e, half, signal));
  if (since === undefined || state.step === undefined) return state;
  const { seenUntil } = observationFor(timeline, half, signal);
  const isTold = state.step.time >= since.time || (seenUntil !== null && seenUntil >= since.time);
  return isTold ? state : { ...state, value: null, since };
}

const moves: ReadonlySet<Signal> = new Set(['removed', 'inserted']);
const exchanges: ReadonlySet<Signal> = new Set(['switchover', 'switchover-command']);
const ofRole: ReadonlySet<StateSignal> = new Set(['role', 'light']);

/** What a signal of a half has to be told anew after. */
function isAfresh(event: TimelineEvent, half: string, signal: StateSignal): boolean {
  return (
    (event.half === half && moves.has(event.signal)) || (exchanges.has(event.signal) && ofRole.has(signal))
  );
}

/** What came after the state was told last, as the end of a sentence. */
export function saySince({ half, signal }: TimelineEvent): string {
  if (signal === 'removed') return `since half ${half} was removed`;
  return signal === 'inserted' ? `since a module was put into half ${half}` : 'since the last switchover';
}
