import { linesOfAll } from '../timeline/evidence.ts';
import { type Point, sayDuration, type TimelineEvent } from '../vocabulary.ts';
import { begins, unexplained } from './begins.ts';
import { type Cause, doubted, type Trouble } from './cause.ts';
import { fixedTimeOf } from './fixed-time.ts';

export const restartLoop: Cause = {
  meta: {
    id: 'restart-loop',
    title: 'The standby restarts again and again',
    kind: 'pattern',
    explains: 'A half that starts, runs into the same thing each time, and starts anew.',
    shows: 'Restarts of one half that follow each other at a regular distance.',
    needs: [['restart']],
    next: 'Stop the loop as the maker says before anything is copied again, and read the fault that the half shows just before it restarts; call for support with both.',
  },
  weigh(trouble) {
    const restarts = restartsOf(trouble);
    const [first, ...rest] = restarts;
    if (first === undefined)
      return doubted([{ statement: 'No restart was logged in this time.', evidence: trouble.evidence }]);
    const evidence = linesOfAll([first, ...rest]);
    const spacings = restarts.slice(1).map((e, index) => (e.time - (restarts[index]?.time ?? e.time)) / 1000);
    const found = fixedTimeOf(spacings, trouble.limits);
    const times = restarts.length === 1 ? 'once' : `${restarts.length} times`;
    if (found === null)
      return doubted([
        { statement: `Half ${first.half ?? ''} restarted ${times}: too few for a loop.`, evidence },
      ]);
    const point: Point = {
      statement: `Half ${first.half ?? ''} restarted ${times}, with a median of ${sayDuration(found.medianSeconds)} between two, half of them within ${sayDuration(found.spreadSeconds)} of it.`,
      evidence,
    };
    return found.fixed ? { decibans: found.decibans, for: [point], against: [] } : doubted([point]);
  },
};

/** Restarts of the half in trouble that no supply fault, removal or insertion brought. */
function restartsOf({ facts: { timeline }, half, from, rules }: Trouble): readonly TimelineEvent[] {
  const restarts = timeline.events.filter(
    (e) => e.signal === 'restart' && e.time >= from - rules.belongsMs && (half === null || e.half === half),
  );
  return unexplained(restarts, timeline, begins(timeline, ['supply'], 'fault'), rules);
}
