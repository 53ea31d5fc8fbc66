import type { Switchover } from '../vocabulary.ts';
import type { Check, Outcome } from './check.ts';
import { judgeEachSwitchover } from './each-switchover.ts';

export const switchoverCommanded: Check = {
  id: 'switchover-commanded',
  title: 'No switchover came by itself',
  judge(swap) {
    return judgeEachSwitchover(swap, judgeCommand);
  },
};

function judgeCommand({ toHalf, commanded, evidence }: Switchover): Outcome {
  if (commanded === null) {
    return {
      status: 'not-observed',
      statement: 'None of these logs ever records a switchover command.',
      evidence,
    };
  }
  return commanded
    ? { status: 'pass', statement: `The switchover to half ${toHalf} was commanded.`, evidence }
    : { status: 'fail', statement: `The switchover to half ${toHalf} came by itself.`, evidence };
}
