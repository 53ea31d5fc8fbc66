import { linesOf } from '../timeline/evidence.ts';
import { stepAt, track } from '../timeline/tracks.ts';
import { begins } from './begins.ts';
import type { Cause } from './cause.ts';
import type { Observation } from './observations.ts';
import { weighFault } from './weigh-fault.ts';
import type { Seen } from './weigh-state.ts';

/**
 * Least evidence with which a good engineer would name it: the supply of one half stated as at fault at one attempt that failed, or as
 * the log ends, where it was good when the partner was ready; or losses and failures within 30 s after a fault of it began, those that a
 * restart brought included, so many of them as chance would bring once in some hundred times. Common practice, no source.
 */
export const supplyFault: Cause = {
  meta: {
    id: 'supply-fault',
    title: 'The supply of a half is faulty',
    kind: 'condition',
    explains: 'A standby that restarts, drops out or fails to synchronise because its supply dips.',
    shows: 'The supply is at fault when attempts fail, or failures follow its faults more often than chance.',
    needs: [['supply']],
    next: 'Measure the supply at the terminals of that half under load, look at its fuse and terminals; let a qualified person put it right before the standby is tried again.',
  },
  weigh: (trouble) =>
    weighFault(
      trouble,
      { priorDecibans: trouble.limits.faultyDecibans, words: 'a supply fault', test: readSupply },
      begins(trouble.facts.timeline, ['supply'], 'fault'),
      'a supply fault began',
    ),
};

function readSupply({ facts: { timeline }, at }: Observation): Seen | null {
  const steps = timeline.halves.flatMap((half) => {
    const step = stepAt(track(timeline, half, 'supply'), at);
    return step === undefined ? [] : [{ half, step }];
  });
  const shown = steps.find(({ step }) => step.value === 'fault') ?? steps[0];
  if (shown === undefined) return null;
  const holds = shown.step.value === 'fault';
  return {
    holds,
    statement: holds ? `The supply of half ${shown.half} is at fault.` : 'No supply is reported as at fault.',
    evidence: linesOf(shown.step),
  };
}
