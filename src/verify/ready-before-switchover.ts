import { type Switchover, sayDuration } from '../vocabulary.ts';
import type { Check, Outcome, SwapCase } from './check.ts';
import { judgeEachSwitchover } from './each-switchover.ts';

export const readyBeforeSwitchover: Check = {
  id: 'ready-before-switchover',
  title: 'Partner ready before each switchover',
  judge(swap) {
    return judgeEachSwitchover(swap, (switchover) => judgeReady(swap, switchover));
  },
};

function judgeReady(
  { facts, rules }: SwapCase,
  { at, toHalf, partnerReady, readySeconds, evidence }: Switchover,
): Outcome {
  const { timeline, readiness } = facts;
  if (partnerReady === null) {
    const status = readiness.signal === 'partner-ready' ? 'inconclusive' : 'not-observed';
    return {
      status,
      statement: `Whether the partner was ready before the switchover to half ${toHalf} is not known.`,
      evidence,
    };
  }
  if (!partnerReady) {
    return {
      status: 'fail',
      statement: `The switchover to half ${toHalf} came while the partner was not ready.`,
      evidence,
    };
  }
  if (timeline.unobserved.some((u) => u.from < at.time && u.to > at.earliest)) {
    return {
      status: 'inconclusive',
      statement: `The switchover to half ${toHalf} lies in an unobserved span.`,
      evidence,
    };
  }
  const since = readiness.steps.findLast((s) => s.value === 'yes' && s.time <= at.earliest);
  const high = since === undefined ? Number.POSITIVE_INFINITY : (at.time - since.earliest) / 1000;
  const low = readySeconds ?? Number.POSITIVE_INFINITY;
  const hold = rules.holdMs / 1000;
  const held = low === Number.POSITIVE_INFINITY ? 'since before the log began' : `for ${sayDuration(low)}`;
  const statement = `Before the switchover to half ${toHalf} the partner had been ready ${held}.`;
  if (low >= hold) return { status: 'pass', statement, evidence };
  return {
    status: high < hold ? 'fail' : 'inconclusive',
    statement: `${statement} It must have held ${sayDuration(hold)}.`,
    evidence,
  };
}
