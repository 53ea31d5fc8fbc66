import { endLines, linesOf } from '../timeline/evidence.ts';
import { stepAt, track } from '../timeline/tracks.ts';
import type { NonEmpty, SourceLine, StateSignal, TimelineEvent } from '../vocabulary.ts';
import type { SwapCase } from './check.ts';

/** What each half reports of one signal at the end of a swap. */
export interface AtEnd {
  readonly half: string;
  readonly value: string | null;
  readonly step: TimelineEvent | undefined;
  readonly everLogged: boolean;
}

export function atEnd({ facts, to }: SwapCase, signal: StateSignal): readonly AtEnd[] {
  return facts.timeline.halves.map((half) => {
    const steps = track(facts.timeline, half, signal);
    const step = stepAt(steps, to);
    return { half, value: step?.value ?? null, step, everLogged: steps.length > 0 };
  });
}

/** The lines that state what holds at the end; the first and last line of the log where nothing does. */
export function endEvidence({ facts }: SwapCase, states: readonly AtEnd[]): NonEmpty<SourceLine> {
  const lines = states.flatMap(({ step }) => (step === undefined ? [] : [...linesOf(step)]));
  const [first, ...rest] = lines;
  return first === undefined ? endLines(facts.timeline) : [first, ...rest];
}
