import type { PairFacts } from '../timeline/facts.ts';
import { unobservedIn } from '../timeline/observation.ts';
import { defaultRules } from '../timeline/rules.ts';
import { track, valueAt } from '../timeline/tracks.ts';
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

/** True if the light is steady at an instant, though it had no time to hold. */
function isSteadyAt({ timeline }: PairFacts, half: string, time: number): boolean {
  return valueAt(track(timeline, half, 'light'), time) === 'steady';
}

function judgeLight({ facts, rules }: SwapCase, bringUp: BringUp): Outcome {
  const { half, light, lightEvidence: evidence, start, watchedTo } = bringUp;
  const status = statusOf[light.outcome ?? 'not-observed'];
  const limit = `the limit is ${sayDuration(rules.lightLimitSeconds)}`;
  if (light.seconds === null || status === 'not-observed') {
    const statement = isSteadyAt(facts, half, start.time)
      ? `Every reading of the light of half ${half} was steady, so how long it took is not known.`
      : `The light of half ${half} after its start was never logged.`;
    return { status: 'not-observed', statement, evidence };
  }
  const gap = unobservedIn(facts.timeline, half, 'light', start.time, watchedTo)[0];
  const unseen =
    gap === undefined || status !== 'inconclusive'
      ? ''
      : ` It was not observed for ${sayDuration((gap.to - gap.from) / 1000)} of that time.`;
  const wasSteady = light.censored && isSteadyAt(facts, half, watchedTo);
  const statement = !light.censored
    ? `The light of half ${half} was steady after ${sayBounds(light.low ?? 0, light.high ?? 0)}; ${limit}.`
    : wasSteady
      ? `The light of half ${half} was steady after ${sayDuration(light.seconds)}, but observation ended too early to tell whether it stayed steady; ${limit}.`
      : `The light of half ${half} was not steady within the ${sayDuration(light.seconds)} observed; ${limit}.`;
  return { status, statement: `${statement}${unseen}`, evidence };
}
