import { endEvidence, stateAtEnd, whyUnknown } from './at-end.ts';
import { type Check, type Outcome, onceOver, type SwapCase } from './check.ts';

export const configurationCurrent: Check = {
  id: 'configuration-current',
  title: 'No configuration pending',
  judge: (swap) => onceOver(swap, judgeConfiguration(swap)),
};

function judgeConfiguration(swap: SwapCase): Outcome {
  const state = stateAtEnd(swap, null, 'configuration');
  const evidence = endEvidence(swap, [state]);
  if (!state.everLogged)
    return { status: 'not-observed', statement: 'The configuration state was never logged.', evidence };
  if (state.value === null) {
    const statement = `The configuration state at the end is not known${whyUnknown(state)}.`;
    return { status: 'inconclusive', statement, evidence };
  }
  return state.value === 'pending'
    ? { status: 'fail', statement: 'At the end a configuration is still pending.', evidence }
    : { status: 'pass', statement: 'At the end no configuration is pending.', evidence };
}
