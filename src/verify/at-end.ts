import { endLines, linesOf } from '../timeline/evidence.ts';
import { unobservedIn } from '../timeline/observation.ts';
import { countUntil, stepAt, track } from '../timeline/tracks.ts';
import {
  type NonEmpty,
  type SourceLine,
  type StateSignal,
  sayDuration,
  type TimelineEvent,
  type Unobserved,
} from '../vocabulary.ts';
import type { SwapCase } from './check.ts';

/** What a half, or the pair, reports of one signal at the end of a swap. */
export interface AtEnd {
  readonly half: string | null;
  /** `null` where it is not known: nothing was reported since the half was out, it was not observed up to the end, or changed about then. */
  readonly value: string | null;
  readonly step: TimelineEvent | undefined;
  readonly everLogged: boolean;
  /** The unobserved span in which the swap ends, if it does in one. */
  readonly unseen: Unobserved | undefined;
  /** The change that came at the end or after it, if its bounds do not tell which. */
  readonly about: TimelineEvent | undefined;
}

/** What each half reports of a signal at the end of a swap. */
export function atEnd(swap: SwapCase, signal: StateSignal): readonly AtEnd[] {
  return swap.facts.timeline.halves.map((half) => stateAtEnd(swap, half, signal));
}

/** What one half, or the pair (`null`), reports of a signal at the end of a swap. */
export function stateAtEnd({ facts, to }: SwapCase, half: string | null, signal: StateSignal): AtEnd {
  const steps = track(facts.timeline, half, signal);
  const step = stepAt(steps, to);
  const unseen = unobservedIn(facts.timeline, half, signal, step?.time ?? to, to).find((u) => u.to === to);
  const next = steps[countUntil(steps, to)];
  const about = next !== undefined && next.earliest < to && next.value !== step?.value ? next : undefined;
  const value = unseen === undefined && about === undefined ? (step?.value ?? null) : null;
  return { half, value, step, everLogged: steps.length > 0, unseen, about };
}

/** Why a state is not known at the end, as the end of a sentence; empty where nothing more can be said. */
export function whyUnknown({ unseen, about }: AtEnd): string {
  if (unseen !== undefined)
    return `: it was not observed for the last ${sayDuration((unseen.to - unseen.from) / 1000)}`;
  return about === undefined
    ? ''
    : `: it became ${about.value ?? 'blank'} within ${sayDuration((about.time - about.earliest) / 1000)} of then`;
}

/** The lines that state what holds at the end; the first and last line of the log where nothing does. */
export function endEvidence({ facts }: SwapCase, states: readonly AtEnd[]): NonEmpty<SourceLine> {
  const lines = states.flatMap(({ step, unseen, about }) => [
    ...(step === undefined ? [] : linesOf(step)),
    ...(about === undefined ? [] : linesOf(about)),
    ...(unseen?.evidence ?? []),
  ]);
  const [first, ...rest] = lines;
  return first === undefined ? endLines(facts.timeline) : [first, ...rest];
}
