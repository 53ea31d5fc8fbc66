import { judge } from '../timeline/durations.ts';
import { uniqueLines } from '../timeline/evidence.ts';
import { unobservedIn } from '../timeline/observation.ts';
import { type BringUp, sayBounds, sayDuration, type Unobserved } from '../vocabulary.ts';
import type { Check, Outcome, SwapCase } from './check.ts';
import { judgeLastBringUps } from './last-bring-ups.ts';

export const synchronised: Check = {
  id: 'synchronised',
  title: 'Each new module synchronised',
  judge(swap) {
    return judgeLastBringUps(swap, (bringUp) => judgeSync(swap, bringUp));
  },
};

function judgeSync(swap: SwapCase, bringUp: BringUp): Outcome {
  const { half, held, cause, settled, evidence } = bringUp;
  if (held.outcome === 'not-observed' || held.low === null) {
    return {
      status: 'not-observed',
      statement: `Whether half ${half} became ready was never logged.`,
      evidence,
    };
  }
  if (settled === null) return judgeUnsettled(swap, bringUp, held.low);
  const decided = judge(held.low, held.high, swap.limits.syncSeconds);
  const status = decided === 'within' ? 'pass' : decided === 'exceeded' ? 'fail' : 'inconclusive';
  const since = cause === 'inserted' ? 'insertion' : cause;
  return {
    status,
    statement: `Half ${half} was ready ${sayBounds(held.low, held.high ?? held.low)} after its ${since} and stayed ready; the limit is ${sayDuration(swap.limits.syncSeconds)}.`,
    evidence,
  };
}

/** No ready surely held: it failed only if none may have held within the limit either. */
function judgeUnsettled({ facts, limits }: SwapCase, bringUp: BringUp, low: number): Outcome {
  const { half, ready, mayHaveSettledAt, watchedTo, start, evidence } = bringUp;
  const watched = sayDuration(Math.max(0, watchedTo - start.time) / 1000);
  const isLate = low > limits.syncSeconds;
  const gap = unobservedIn(facts.timeline, null, 'partner-ready', start.time, watchedTo)[0];
  if (mayHaveSettledAt !== null && !isLate) return inGap(half, gap, evidence);
  if (ready !== null) {
    return {
      status: isLate ? 'fail' : 'inconclusive',
      statement: `Half ${half} became ready, but did not stay ready in the ${watched} observed.`,
      evidence,
    };
  }
  return isLate
    ? {
        status: 'fail',
        statement: `Half ${half} did not become ready in the ${watched} observed.`,
        evidence,
      }
    : {
        status: 'inconclusive',
        statement: `Half ${half} was not ready after ${watched}, when observation ended.`,
        evidence,
      };
}

/** It may have become ready and held, unseen, or where the log ends before that can be told. */
function inGap(half: string, gap: Unobserved | undefined, evidence: Outcome['evidence']): Outcome {
  return gap === undefined
    ? {
        status: 'inconclusive',
        statement: `Half ${half} became ready, but observation ended too early to tell whether it stayed ready.`,
        evidence,
      }
    : {
        status: 'inconclusive',
        statement: `Readiness was not observed for ${sayDuration((gap.to - gap.from) / 1000)} after the start of half ${half}.`,
        evidence: uniqueLines([...evidence, ...gap.evidence]),
      };
}
