import { linesOf } from '../timeline/evidence.ts';
import { stepAt, track } from '../timeline/tracks.ts';
import type { Cause } from './cause.ts';
import type { Observation } from './observations.ts';
import { type Seen, weighState } from './weigh-state.ts';

/**
 * Least evidence with which a good engineer would name it: a line says that a configuration is pending at one attempt that failed, and
 * none was pending when a partner was ready. Without that it is only suspected. Common practice, no source.
 */
export const configurationPending: Cause = {
  meta: {
    id: 'configuration-pending',
    title: 'A configuration is pending',
    kind: 'condition',
    explains:
      'The active half does not run what was last prepared, so there is no settled configuration to copy.',
    shows: 'The configuration is pending whenever an attempt fails, and was not when the partner was ready.',
    needs: [['configuration']],
    next: 'Ask who prepared the change and whether it may be sent now; send it or take it back, then start the standby again.',
  },
  weigh: (trouble) =>
    weighState(trouble, {
      priorDecibans: trouble.limits.hinderingDecibans,
      words: 'a pending configuration',
      test: readConfiguration,
    }),
};

function readConfiguration({ facts, at }: Observation): Seen | null {
  const step = stepAt(track(facts.timeline, null, 'configuration'), at);
  if (step === undefined) return null;
  const holds = step.value === 'pending';
  return {
    holds,
    statement: holds ? 'A configuration is pending.' : 'No configuration is pending.',
    evidence: linesOf(step),
  };
}
