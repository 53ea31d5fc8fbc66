import { judge } from '../timeline/durations.ts';
import { type BringUp, sayBounds, sayDuration } from '../vocabulary.ts';
import type { Check, Outcome } from './check.ts';
import { judgeLastBringUps } from './last-bring-ups.ts';

export const synchronised: Check = {
  id: 'synchronised',
  title: 'Each new module synchronised',
  judge(swap) {
    return judgeLastBringUps(swap, (bringUp) => judgeSync(bringUp, swap.limits.syncSeconds));
  },
};

function judgeSync(bringUp: BringUp, limitSeconds: number): Outcome {
  const { half, sync, outcome, evidence } = bringUp;
  if (sync.seconds === null) {
    return {
      status: 'not-observed',
      statement: `Whether half ${half} became ready was never logged.`,
      evidence,
    };
  }
  if (bringUp.settled === null) return judgeUnsettled(bringUp, limitSeconds);
  // The ready that held counts; the first one may have come before it.
  const later = (bringUp.settled.time - (bringUp.ready?.time ?? bringUp.settled.time)) / 1000;
  const [low, high] = [(sync.low ?? 0) + later, (sync.high ?? 0) + later];
  const decided = judge(low, high, limitSeconds);
  const status = decided === 'within' ? 'pass' : decided === 'exceeded' ? 'fail' : 'inconclusive';
  return {
    status,
    statement: `Half ${half} was ready ${sayBounds(low, high)} after its ${bringUp.cause === 'inserted' ? 'insertion' : bringUp.cause}, and that held (${outcome}).`,
    evidence,
  };
}

function judgeUnsettled(
  { half, outcome, ready, sync, watchedTo, start, evidence }: BringUp,
  limitSeconds: number,
): Outcome {
  if (outcome === 'lost') {
    return { status: 'fail', statement: `Half ${half} became ready but did not stay so.`, evidence };
  }
  const watchedSeconds = Math.max(0, watchedTo - start.time) / 1000;
  if (ready !== null) {
    return {
      status: 'inconclusive',
      statement: `Half ${half} became ready, but was not watched long enough to see it hold.`,
      evidence,
    };
  }
  return (sync.low ?? 0) > limitSeconds
    ? {
        status: 'fail',
        statement: `Half ${half} was never ready in the ${sayDuration(watchedSeconds)} it was watched.`,
        evidence,
      }
    : {
        status: 'inconclusive',
        statement: `Half ${half} was not ready when the watch on it ended after ${sayDuration(watchedSeconds)}.`,
        evidence,
      };
}
