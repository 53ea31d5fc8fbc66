import { endLines } from '../timeline/evidence.ts';
import { sayDuration } from '../vocabulary.ts';
import { type Check, onceOver } from './check.ts';
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
      const statement = 'Nothing settled after the last module came in, so the 30 minutes did not begin.';
      return { status: 'inconclusive', statement, evidence };
    }
    const name = 'the 30 minutes after the last module had settled';
    const outcome = judgeUnbroken(swap, { from: settledAt, to, name, spared: () => false });
    const seconds = (to - settledAt) / 1000;
    if (outcome.status === 'fail') return outcome;
    if (outcome.status === 'pass' && seconds < limits.soakSeconds) {
      const statement = `The log ends ${sayDuration(seconds)} after the last module had settled; ${sayDuration(limits.soakSeconds)} are needed.`;
      return { ...outcome, status: 'inconclusive', statement };
    }
    return onceOver(swap, outcome);
  },
};
