import {
  type NonEmpty,
  type PairTimeline,
  type SourceLine,
  type StateSignal,
  sayDuration,
  type TimelineEvent,
  type Unobserved,
} from '../vocabulary.ts';
import { linesOf } from './evidence.ts';
import { unobservedIn } from './observation.ts';
import { countUntil, stepAt, track } from './tracks.ts';

/** What a half, or the pair, reports of one signal at an instant. */
export interface StateAt {
  readonly half: string | null;
  /** `null` where it is not known: nothing was reported since the half was out, it was not observed up to then, or changed about then. */
  readonly value: string | null;
  readonly step: TimelineEvent | undefined;
  readonly everLogged: boolean;
  /** The unobserved span in which the instant lies, if it does in one. */
  readonly unseen: Unobserved | undefined;
  /** The change that came then or later, if its bounds do not tell which. */
  readonly about: TimelineEvent | undefined;
}

/** What one half, or the pair (`null`), reports of a signal at an instant. */
export function stateAt(
  timeline: PairTimeline,
  half: string | null,
  signal: StateSignal,
  time: number,
): StateAt {
  const steps = track(timeline, half, signal);
  const step = stepAt(steps, time);
  const unseen = unobservedIn(timeline, half, signal, step?.time ?? time, time).find((u) => u.to === time);
  const next = steps[countUntil(steps, time)];
  const about = next !== undefined && next.earliest < time && next.value !== step?.value ? next : undefined;
  const value = unseen === undefined && about === undefined ? (step?.value ?? null) : null;
  return { half, value, step, everLogged: steps.length > 0, unseen, about };
}

/** Why a state is not known, as the end of a sentence; empty where nothing more can be said. */
export function whyUnknown({ unseen, about }: StateAt): string {
  if (unseen !== undefined)
    return `: it was not observed for the last ${sayDuration((unseen.to - unseen.from) / 1000)}`;
  return about === undefined
    ? ''
    : `: it became ${about.value ?? 'blank'} within ${sayDuration((about.time - about.earliest) / 1000)} of then`;
}

/** The lines that state what holds, or between which it was not observed; empty where none do. */
export function linesOfStates(states: readonly StateAt[]): readonly SourceLine[] {
  return states.flatMap(({ step, unseen, about }) => [
    ...(step === undefined ? [] : linesOf(step)),
    ...(about === undefined ? [] : linesOf(about)),
    ...(unseen?.evidence ?? []),
  ]);
}

/** Some lines where there are any, else others. */
export function linesOr(lines: readonly SourceLine[], others: NonEmpty<SourceLine>): NonEmpty<SourceLine> {
  const [first, ...rest] = lines;
  return first === undefined ? others : [first, ...rest];
}
