import { atEnd, endEvidence, whyUnknown } from './at-end.ts';
import { type Check, type Outcome, onceOver, type SwapCase } from './check.ts';

export const modelsMatched: Check = {
  id: 'models-matched',
  title: 'Models of both halves the same, and as planned',
  judge: (swap) => onceOver(swap, judgeModels(swap)),
};

function judgeModels(swap: SwapCase): Outcome {
  const states = atEnd(swap, 'model');
  const evidence = endEvidence(swap, states);
  if (!states.some((s) => s.everLogged)) {
    return { status: 'not-observed', statement: 'The model was never logged.', evidence };
  }
  const unplanned = states.find((s) => {
    const planned = swap.plan[s.half ?? '']?.model;
    return planned !== undefined && s.value !== null && s.value !== planned;
  });
  if (unplanned !== undefined) {
    const planned = swap.plan[unplanned.half ?? '']?.model;
    return {
      status: 'fail',
      statement: `Half ${unplanned.half} reports model ${unplanned.value}; ${planned} was planned.`,
      evidence,
    };
  }
  const silent = states.find((s) => s.value === null);
  if (silent !== undefined) {
    return {
      status: 'inconclusive',
      statement: `The model of half ${silent.half} at the end is not known${whyUnknown(silent)}.`,
      evidence,
    };
  }
  const said = states.map((s) => `half ${s.half} ${s.value}`).join(', ');
  return new Set(states.map((s) => s.value)).size === 1
    ? { status: 'pass', statement: `At the end both halves report model ${states[0]?.value}.`, evidence }
    : { status: 'fail', statement: `At the end the models differ: ${said}.`, evidence };
}
