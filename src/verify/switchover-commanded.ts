import type { Switchover } from '../vocabulary.ts';
import type { Check, Outcome, SwapCase } from './check.ts';
import { judgeEachSwitchover, toHalfWords } from './each-switchover.ts';

export const switchoverCommanded: Check = {
  id: 'switchover-commanded',
  title: 'Every switchover commanded',
  judge(swap) {
    return judgeEachSwitchover(swap, (switchover) => judgeCommand(swap, switchover));
  },
};

function judgeCommand({ facts }: SwapCase, { toHalf, commanded, evidence }: Switchover): Outcome {
  const switchover = toHalfWords(toHalf);
  if (commanded === null && !facts.isCommandLogged) {
    return {
      status: 'not-observed',
      statement: 'No log that records switchover commands names this pair.',
      evidence,
    };
  }
  if (commanded === null) {
    const statement = `Whether the switchover${switchover} was commanded is not known: the log that records commands does not cover it.`;
    return { status: 'inconclusive', statement, evidence };
  }
  return commanded
    ? { status: 'pass', statement: `The switchover${switchover} was commanded.`, evidence }
    : { status: 'fail', statement: `The switchover${switchover} was not commanded.`, evidence };
}
