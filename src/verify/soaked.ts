import { endLines } from '../timeline/evidence.ts';
import { sayDuration } from '../vocabulary.ts';
import { type Check, type Outcome, onceOver, type SwapCase } from './check.ts';
import { judgeUnbroken } from './unbroken.ts';

export const soaked: Check = {
  id: 'soaked',
  title: 'Ready partner for 30 minutes at the end',
  judge(swap) {
    const { facts, settledAt, to, limits } = swap;
    const evidence = endLines(facts.timeline);
    if (facts.readiness.signal !== 'partner-ready')
      return { status: 'not-observed', statement: 'Readiness of the partner was never logged.', evidence };
    if (settledAt === null) {
      const statement = 'No bring-up settled after the last insertion, so the 30 minutes never started.';
      return { status: 'inconclusive', statement, evidence };
    }
    const outcome = judgeFrom(swap, settledAt);
    const seconds = (to - settledAt) / 1000;
    if (outcome.status === 'fail') return outcome;
    if (outcome.status === 'pass' && seconds < limits.soakSeconds) {
      const statement = `The log ends ${sayDuration(seconds)} after the last module settled; ${sayDuration(limits.soakSeconds)} are needed.`;
      return { ...outcome, status: 'inconclusive', statement };
    }
    return onceOver(swap, outcome);
  },
};

/** From the ready that surely settled; undecided where from the first that may have settled it would be the other way, or is not known. */
function judgeFrom(swap: SwapCase, settledAt: number): Outcome {
  const last = swap.bringUps.find((b) => b.settled?.time === settledAt);
  const late = judgeSoak(swap, settledAt);
  const early = judgeSoak(swap, last?.mayHaveSettledAt ?? settledAt);
  if (late.status === 'pass' && early.status === 'inconclusive') return early;
  const isEither = late.status === 'fail' ? early.status !== 'fail' : early.status === 'fail';
  if (!isEither || late.status === 'inconclusive') return late;
  return {
    status: 'inconclusive',
    statement:
      'The partner was lost within the 30 minutes or outside them: the time when the last module settled is not known closely enough to tell.',
    evidence: (late.status === 'fail' ? late : early).evidence,
  };
}

function judgeSoak(swap: SwapCase, from: number): Outcome {
  const to = Math.min(swap.to, from + swap.limits.soakSeconds * 1000);
  const name = 'the 30 minutes after the last module settled';
  return judgeUnbroken(swap, { from, to, name, spared: () => false });
}
