import { type BringUp, type CheckStatus, type LimitOutcome, sayBounds, sayDuration } from '../vocabulary.ts';
import type { Check, Outcome } from './check.ts';
import { judgeLastBringUps } from './last-bring-ups.ts';

const statusOf: Readonly<Record<LimitOutcome, CheckStatus>> = {
  within: 'pass',
  exceeded: 'fail',
  inconclusive: 'inconclusive',
  'not-observed': 'not-observed',
};

export const lightSteady: Check = {
  id: 'light-steady',
  title: 'Light steady within five minutes',
  judge(swap) {
    return judgeLastBringUps(swap, (bringUp) => judgeLight(bringUp, swap.rules.lightLimitSeconds));
  },
};

function judgeLight({ half, light, lightEvidence: evidence }: BringUp, limitSeconds: number): Outcome {
  const status = statusOf[light.outcome ?? 'not-observed'];
  const limit = `the limit is ${sayDuration(limitSeconds)}`;
  if (light.seconds === null) {
    return {
      status: 'not-observed',
      statement: `The light of half ${half} after its start was never logged.`,
      evidence,
    };
  }
  const statement = light.censored
    ? `The light of half ${half} was not steady in the ${sayDuration(light.seconds)} it was watched; ${limit}.`
    : `The light of half ${half} was steady after ${sayBounds(light.low ?? 0, light.high ?? 0)}; ${limit}.`;
  return { status, statement, evidence };
}
