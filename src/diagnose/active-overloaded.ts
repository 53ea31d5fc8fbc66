import { endLines } from '../timeline/evidence.ts';
import { activeAt } from '../timeline/standby.ts';
import type { Cause, Trouble } from './cause.ts';
import { gaugeMedian } from './gauge-median.ts';
import type { Observation } from './observations.ts';
import { type Seen, weighState } from './weigh-state.ts';

/**
 * Least evidence with which a good engineer would name it: one attempt that failed while the median load of the active half, over
 * the attempt, was over 90 %, and one partner that became ready under less. Common practice, no source.
 */
export const activeOverloaded: Cause = {
  meta: {
    id: 'active-overloaded',
    title: 'The active half is overloaded',
    kind: 'condition',
    explains: 'An active half that has no time left to copy its state to the standby.',
    shows: 'Its median load is over the limit while attempts fail, and was not while the partner was ready.',
    needs: [['load']],
    next: 'Find what loads the active half: a new task, a shorter cycle, a monitoring session left open. Agree with operations to remove it before the standby is tried again.',
  },
  weigh: (trouble) =>
    weighState(trouble, {
      priorDecibans: trouble.limits.hinderingDecibans,
      words: 'such a load',
      test: (observation) => readLoad(observation, trouble),
    }),
};

function readLoad(
  { facts: { timeline }, ready, from, to, at }: Observation,
  { limits }: Trouble,
): Seen | null {
  const active = activeAt(timeline, at);
  if (active === null) return null;
  // A load that rises later leaves a partner ready that is so already: what counts is how it was when it synchronised.
  const median = gaugeMedian(timeline, active, 'load', from, ready ? at : to);
  if (median === null) return null;
  return {
    holds: median > limits.loadPercent,
    statement: `The median load of the active half ${active} was ${median.toFixed(0)} %; the limit is ${limits.loadPercent} %.`,
    evidence: endLines(timeline),
  };
}
