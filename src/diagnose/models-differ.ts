import { linesOfAll } from '../timeline/evidence.ts';
import { otherHalf } from '../timeline/standby.ts';
import { stepAt, track } from '../timeline/tracks.ts';
import type { Cause } from './cause.ts';
import type { Observation } from './observations.ts';
import { type Seen, weighState } from './weigh-state.ts';

/**
 * Least evidence with which a good engineer would name it: both halves state their model and it differs at one attempt that failed, and
 * one partner was ready with one model in both. Without that it is only suspected: many models can be mixed. Common practice, no source.
 */
export const modelsDiffer: Cause = {
  meta: {
    id: 'models-differ',
    title: 'The halves are of different models',
    kind: 'condition',
    explains: 'Two modules that cannot back each other up, as an old and a new model may not.',
    shows: 'Both halves report their model, it is not the same, and no pair was ever ready like that.',
    needs: [['model']],
    next: "Read the model on both nameplates and look in the maker's list whether the two may form a pair; if not, fit the model that was planned.",
  },
  weigh: (trouble) =>
    weighState(trouble, {
      priorDecibans: trouble.limits.hinderingDecibans,
      words: 'models that differ',
      test: compareModels,
    }),
};

function compareModels({ facts, half, at }: Observation): Seen | null {
  if (half === null) return null;
  const { timeline } = facts;
  const other = otherHalf(timeline, half);
  const own = stepAt(track(timeline, half, 'model'), at);
  const partner = other === null ? undefined : stepAt(track(timeline, other, 'model'), at);
  if (own === undefined || own.value === null || partner === undefined || partner.value === null) return null;
  const holds = own.value !== partner.value;
  return {
    holds,
    statement: holds
      ? `Half ${half} is a ${own.value}, half ${other} a ${partner.value}.`
      : `Both halves are ${own.value}.`,
    evidence: linesOfAll([own, partner]),
  };
}
