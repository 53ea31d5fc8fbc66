import type { Switchover } from '../vocabulary.ts';
import { atEnd, endEvidence, whyUnknown } from './at-end.ts';
import { type Check, type Outcome, onceOver, type SwapCase, worstOf } from './check.ts';
import { toHalfWords } from './each-switchover.ts';

export const firmwareMatched: Check = {
  id: 'firmware-matched',
  title: 'Firmware of both halves the same',
  judge(swap) {
    const atTheEnd = judgeEnd(swap);
    return atTheEnd.status === 'not-observed'
      ? atTheEnd
      : worstOf([onceOver(swap, atTheEnd), ...swap.switchovers.map(judgeSwitchover)]);
  },
};

function judgeEnd(swap: SwapCase): Outcome {
  const states = atEnd(swap, 'firmware');
  const evidence = endEvidence(swap, states);
  if (!states.some((s) => s.everLogged)) {
    return { status: 'not-observed', statement: 'Firmware was never logged.', evidence };
  }
  const unplanned = states.find((s) => {
    const planned = swap.plan[s.half ?? '']?.firmware;
    return planned !== undefined && s.value !== null && s.value !== planned;
  });
  if (unplanned !== undefined) {
    const planned = swap.plan[unplanned.half ?? '']?.firmware;
    return {
      status: 'fail',
      statement: `At the end half ${unplanned.half} reports firmware ${unplanned.value}; ${planned} was planned.`,
      evidence,
    };
  }
  const silent = states.find((s) => s.value === null);
  if (silent !== undefined) {
    return {
      status: 'inconclusive',
      statement: `The firmware of half ${silent.half} at the end is not known${whyUnknown(silent)}.`,
      evidence,
    };
  }
  const said = states.map((s) => `half ${s.half} ${s.value}`).join(', ');
  return new Set(states.map((s) => s.value)).size === 1
    ? { status: 'pass', statement: `At the end both halves report firmware ${states[0]?.value}.`, evidence }
    : { status: 'fail', statement: `At the end the firmware differs: ${said}.`, evidence };
}

function judgeSwitchover({ firmwareMatched: matched, toHalf, evidence }: Switchover): Outcome {
  const switchover = toHalfWords(toHalf);
  if (matched === null) {
    const statement = `The firmware at the switchover${switchover} is not known.`;
    return { status: 'inconclusive', statement, evidence };
  }
  return matched
    ? { status: 'pass', statement: `At the switchover${switchover} the firmware was the same.`, evidence }
    : {
        status: 'fail',
        statement: `The switchover${switchover} came while the firmware differed.`,
        evidence,
      };
}
