import { endLines } from '../timeline/evidence.ts';
import { linesOfStates, linesOr, type StateAt, stateAt } from '../timeline/state-at.ts';
import type { NonEmpty, SourceLine, StateSignal } from '../vocabulary.ts';
import type { SwapCase } from './check.ts';

export { whyUnknown } from '../timeline/state-at.ts';

/** What a half, or the pair, reports of one signal at the end of a swap. */
export type AtEnd = StateAt;

/** What each half reports of a signal at the end of a swap. */
export function atEnd(swap: SwapCase, signal: StateSignal): readonly AtEnd[] {
  return swap.facts.timeline.halves.map((half) => stateAtEnd(swap, half, signal));
}

/** What one half, or the pair (`null`), reports of a signal at the end of a swap. */
export function stateAtEnd({ facts, to }: SwapCase, half: string | null, signal: StateSignal): AtEnd {
  return stateAt(facts.timeline, half, signal, to);
}

/** The lines that state what holds at the end; the first and last line of the log where nothing does. */
export function endEvidence({ facts }: SwapCase, states: readonly AtEnd[]): NonEmpty<SourceLine> {
  return linesOr(linesOfStates(states), endLines(facts.timeline));
}
