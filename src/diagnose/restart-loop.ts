import { between } from '../timeline/durations.ts';
import { linesOfAll } from '../timeline/evidence.ts';
import { type Point, sayAbout, type TimelineEvent } from '../vocabulary.ts';
import { begins, unexplained } from './begins.ts';
import { type Cause, doubted, type Trouble } from './cause.ts';
import { fixedTimeOf, saySpread } from './fixed-time.ts';

export const restartLoop: Cause = {
  meta: {
    id: 'restart-loop',
    title: 'The standby restarts again and again',
    kind: 'pattern',
    explains: 'A half that starts, runs into the same thing each time, and starts again.',
    shows: 'Restarts of one half that follow each other at a regular distance.',
    needs: [['restart']],
    next: 'Stop the loop as the maker says before anything is copied again, and read the fault that the half shows just before it restarts; call for support with both.',
  },
  weigh(trouble) {
    const restarts = restartsOf(trouble);
    const [first, ...rest] = restarts;
    if (first === undefined) return doubted([noRestart(trouble)]);
    const evidence = linesOfAll([first, ...rest]);
    const spacings = restarts.slice(1).map((e, index) => between(restarts[index] ?? e, e));
    const found = fixedTimeOf(spacings, trouble.limits);
    const times = restarts.length === 1 ? 'once' : `${restarts.length} times`;
    if (found === null)
      return doubted([
        { statement: `Half ${first.half ?? ''} restarted ${times}: too few for a loop.`, evidence },
      ]);
    const point: Point = {
      statement: `Half ${first.half ?? ''} restarted ${times}, with a median of ${sayAbout(found.median)} between two${saySpread(found)}.`,
      evidence,
    };
    return found.verdict === 'fixed'
      ? { decibans: found.decibans, for: [point], against: [] }
      : doubted([point]);
  },
};

function noRestart({ half, evidence }: Trouble): Point {
  return {
    statement: `No restart${half === null ? '' : ` of half ${half}`} was logged in this time.`,
    evidence,
  };
}

/** Restarts of the half in trouble that no supply fault, removal or insertion brought. */
function restartsOf({ facts: { timeline }, half, from, rules }: Trouble): readonly TimelineEvent[] {
  const restarts = timeline.events.filter(
    (e) => e.signal === 'restart' && e.time >= from - rules.belongsMs && (half === null || e.half === half),
  );
  return unexplained(restarts, timeline, begins(timeline, ['supply'], 'fault'), rules);
}
