import type { Switchover } from '../vocabulary.ts';
import { atEnd, endEvidence } from './at-end.ts';
import { type Check, type Outcome, type SwapCase, worstOf } from './check.ts';

export const firmwareMatched: Check = {
  id: 'firmware-matched',
  title: 'Firmware of both halves the same',
  judge(swap) {
    const atTheEnd = judgeEnd(swap);
    return atTheEnd.status === 'not-observed'
      ? atTheEnd
      : worstOf([atTheEnd, ...swap.switchovers.map(judgeSwitchover)]);
  },
};

function judgeEnd(swap: SwapCase): Outcome {
  const states = atEnd(swap, 'firmware');
  const evidence = endEvidence(swap, states);
  if (!states.some((s) => s.everLogged)) {
    return { status: 'not-observed', statement: 'Firmware was never logged.', evidence };
  }
  const silent = states.find((s) => s.value === null);
  if (silent !== undefined) {
    return {
      status: 'inconclusive',
      statement: `The firmware of half ${silent.half} at the end is not known.`,
      evidence,
    };
  }
  const said = states.map((s) => `half ${s.half} ${s.value}`).join(', ');
  return new Set(states.map((s) => s.value)).size === 1
    ? { status: 'pass', statement: `At the end both halves report firmware ${states[0]?.value}.`, evidence }
    : { status: 'fail', statement: `At the end the firmware differs: ${said}.`, evidence };
}

function judgeSwitchover({ firmwareMatched: matched, toHalf, evidence }: Switchover): Outcome {
  if (matched === null) {
    return {
      status: 'inconclusive',
      statement: `The firmware at the switchover to half ${toHalf} is not known.`,
      evidence,
    };
  }
  return matched
    ? {
        status: 'pass',
        statement: `At the switchover to half ${toHalf} the firmware was the same.`,
        evidence,
      }
    : {
        status: 'fail',
        statement: `The switchover to half ${toHalf} came while the firmware differed.`,
        evidence,
      };
}
