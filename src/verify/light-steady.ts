import { unobservedIn } from '../timeline/observation.ts';
import { defaultRules } from '../timeline/rules.ts';
import {
  type BringUp,
  type CheckStatus,
  type LimitOutcome,
  sayBounds,
  sayDuration,
  sayLimit,
} from '../vocabulary.ts';
import type { Check, Outcome, SwapCase } from './check.ts';
import { judgeLastBringUps } from './last-bring-ups.ts';

const statusOf: Readonly<Record<LimitOutcome, CheckStatus>> = {
  within: 'pass',
  exceeded: 'fail',
  inconclusive: 'inconclusive',
  'not-observed': 'not-observed',
};

export const lightSteady: Check = {
  id: 'light-steady',
  title: `Light steady within ${sayLimit(defaultRules.lightLimitSeconds)}`,
  judge(swap) {
    return judgeLastBringUps(swap, (bringUp) => judgeLight(swap, bringUp));
  },
};

function judgeLight({ facts, rules }: SwapCase, bringUp: BringUp): Outcome {
  const { half, light, lightEvidence: evidence, start, watchedTo } = bringUp;
  const status = statusOf[light.outcome ?? 'not-observed'];
  const limit = `the limit is ${sayDuration(rules.lightLimitSeconds)}`;
  if (light.seconds === null || status === 'not-observed') {
    return {
      status: 'not-observed',
      statement: `The light of half ${half} after its start was never logged.`,
      evidence,
    };
  }
  const gap = unobservedIn(facts.timeline, half, 'light', start.time, watchedTo)[0];
  const unseen =
    gap === undefined || status !== 'inconclusive'
      ? ''
      : ` It was not observed for ${sayDuration((gap.to - gap.from) / 1000)} of that time.`;
  const wasSteady = light.censored && (light.low ?? 0) < light.seconds;
  const statement = !light.censored
    ? `The light of half ${half} was steady after ${sayBounds(light.low ?? 0, light.high ?? 0)}; ${limit}.`
    : wasSteady
      ? `The light of half ${half} may have been steady after ${sayDuration(light.low ?? 0)}, but was not surely seen to hold; ${limit}.`
      : `The light of half ${half} was not steady in the ${sayDuration(light.seconds)} it was watched; ${limit}.`;
  return { status, statement: `${statement}${unseen}`, evidence };
}
