import { linesOf } from '../timeline/evidence.ts';
import { stepAt, track } from '../timeline/tracks.ts';
import type { SourceLine } from '../vocabulary.ts';
import type { Observation } from './observations.ts';

/** The lines that say which serial the half had then; none where it was never reported. */
export function identityLines({ facts, half, at }: Observation): readonly SourceLine[] {
  const step = stepAt(track(facts.timeline, half, 'serial'), at);
  return step === undefined ? [] : linesOf(step);
}
