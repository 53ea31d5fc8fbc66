import { linesOf } from '../timeline/evidence.ts';
import { stepAt, track } from '../timeline/tracks.ts';
import type { Cause } from './cause.ts';
import { fieldRules } from './field-rules.ts';
import type { Observation } from './observations.ts';
import { type Seen, weighState } from './weigh-state.ts';

/**
 * Least evidence with which a good engineer would name it: the links of one half stated as crossed at one attempt that failed, or as the
 * log ends, where they were straight when the partner was ready. Common practice, no source.
 */
export const linksCrossed: Cause = {
  meta: {
    id: 'links-crossed',
    title: 'The network cables are exchanged',
    kind: 'condition',
    explains: 'A half that is on the network but does not find its partner on the expected link.',
    shows: 'A half reports its links as crossed when an attempt fails.',
    needs: [['links']],
    next: `Look at both network cables of both halves: which port, which network. Put each where its label says. ${fieldRules.cables}`,
  },
  weigh: (trouble) =>
    weighState(trouble, {
      priorDecibans: trouble.limits.faultyDecibans,
      words: 'crossed links',
      test: readLinks,
    }),
};

function readLinks({ facts: { timeline }, at }: Observation): Seen | null {
  const steps = timeline.halves.flatMap((half) => {
    const step = stepAt(track(timeline, half, 'links'), at);
    return step === undefined ? [] : [{ half, step }];
  });
  const shown = steps.find(({ step }) => step.value === 'crossed') ?? steps[0];
  if (shown === undefined) return null;
  const holds = shown.step.value === 'crossed';
  return {
    holds,
    statement: holds
      ? `The links of half ${shown.half} are crossed.`
      : 'The links are straight where they are reported.',
    evidence: linesOf(shown.step),
  };
}
