import { endLines } from '../timeline/evidence.ts';
import { activeAt } from '../timeline/standby.ts';
import type { Cause, Trouble } from './cause.ts';
import { gaugeMedian } from './gauge-median.ts';
import type { Observation } from './observations.ts';
import { type Seen, weighState } from './weigh-state.ts';

export const activeOverloaded: Cause = {
  meta: {
    id: 'active-overloaded',
    title: 'The active half is overloaded',
    kind: 'condition',
    explains: 'An active half that has no time left to copy its state to the standby.',
    shows: 'Its median load is over the limit while attempts fail, and was not while the partner was ready.',
    needs: [['load']],
    next: 'Look what loads the active half: a new task, a shorter cycle, a watch left open by someone. Take it off with whoever runs the process before the standby is tried again.',
  },
  weigh: (trouble) =>
    weighState(trouble, {
      priorDecibans: trouble.limits.hinderingDecibans,
      words: 'such a load',
      test: (observation) => readLoad(observation, trouble),
    }),
};

function readLoad({ facts: { timeline }, from, to, at }: Observation, { limits }: Trouble): Seen | null {
  const active = activeAt(timeline, at);
  if (active === null) return null;
  const median = gaugeMedian(timeline, active, 'load', from, to);
  if (median === null) return null;
  return {
    holds: median > limits.loadPercent,
    statement: `The median load of the active half ${active} was ${median.toFixed(0)} %; the limit is ${limits.loadPercent} %.`,
    evidence: endLines(timeline),
  };
}
