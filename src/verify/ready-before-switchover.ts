import { uniqueLines } from '../timeline/evidence.ts';
import { unobservedIn } from '../timeline/observation.ts';
import { readinessSpacing } from '../timeline/readiness.ts';
import { type Switchover, sayDuration } from '../vocabulary.ts';
import type { Check, Outcome, SwapCase } from './check.ts';
import { judgeEachSwitchover, toHalfWords } from './each-switchover.ts';

export const readyBeforeSwitchover: Check = {
  id: 'ready-before-switchover',
  title: 'Partner ready before each switchover',
  judge(swap) {
    return judgeEachSwitchover(swap, (switchover) => judgeReady(swap, switchover));
  },
};

function judgeReady({ facts, rules }: SwapCase, switchover: Switchover): Outcome {
  const { at, toHalf, partnerReady, readySeconds, evidence } = switchover;
  const { readiness } = facts;
  const words = toHalfWords(toHalf);
  if (partnerReady === null) {
    const status = readiness.signal === 'partner-ready' ? 'inconclusive' : 'not-observed';
    const statement = `Whether the partner was ready before the switchover${words} is not known.`;
    return { status, statement, evidence };
  }
  // The switchover may have come anywhere in a span in which nobody saw whether the partner was ready.
  const unseen = unobservedIn(facts.timeline, null, 'partner-ready', at.earliest, at.time)[0];
  if (unseen !== undefined) {
    const statement = `Readiness of the partner was not observed for ${sayDuration((unseen.to - unseen.from) / 1000)} about the switchover${words}.`;
    return {
      status: 'inconclusive',
      statement,
      evidence: uniqueLines([...evidence, ...unseen.evidence]),
    };
  }
  // It may have been lost, or become ready, within the bounds of the switchover itself; where looks are far apart, unseen.
  const isWide = Math.max(at.time - at.earliest, readinessSpacing(facts.timeline)) > rules.holdMs;
  const within = isWide || readiness.steps.some((s) => s.time > at.earliest && s.earliest < at.time);
  if (!partnerReady) {
    return {
      status: within ? 'inconclusive' : 'fail',
      statement: within
        ? `When last logged before the switchover${words} the partner was not ready; it may have become ready by then.`
        : `The switchover${words} came while the partner was not ready.`,
      evidence,
    };
  }
  const since = readiness.steps.findLast((s) => s.value === 'yes' && s.time <= at.earliest);
  const high = since === undefined ? Number.POSITIVE_INFINITY : (at.time - since.earliest) / 1000;
  const low = readySeconds ?? Number.POSITIVE_INFINITY;
  const hold = rules.holdMs / 1000;
  const held = low === Number.POSITIVE_INFINITY ? 'since before the log began' : `for ${sayDuration(low)}`;
  const statement = `Before the switchover${words} the partner had been ready ${held}.`;
  if (low >= hold) return { status: 'pass', statement, evidence };
  return {
    status: high < hold ? 'fail' : 'inconclusive',
    statement: `${statement} At least ${sayDuration(hold)} are needed.`,
    evidence,
  };
}
