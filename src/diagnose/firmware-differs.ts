import { linesOfAll } from '../timeline/evidence.ts';
import { otherHalf } from '../timeline/standby.ts';
import { stepAt, track } from '../timeline/tracks.ts';
import type { Cause } from './cause.ts';
import { fieldRules } from './field-rules.ts';
import type { Observation } from './observations.ts';
import { type Seen, weighState } from './weigh-state.ts';

/**
 * Least evidence with which a good engineer would name it: both halves state their firmware and it differs at one attempt that failed,
 * or as the log ends without a ready partner, whether a partner was ever ready in the log or not. Common practice, no source.
 */
export const firmwareDiffers: Cause = {
  meta: {
    id: 'firmware-differs',
    title: 'The halves run different firmware',
    kind: 'condition',
    explains: 'The standby is seen and identified, but no sync ever succeeds.',
    shows: 'Both halves report their firmware, and it is not the same when an attempt fails.',
    needs: [['firmware']],
    next: `Compare the firmware that both halves show; if it differs, reflash the standby half to that of the active half and wait for its light. ${fieldRules.firmware}`,
  },
  weigh: (trouble) =>
    weighState(trouble, {
      priorDecibans: trouble.limits.forbiddingDecibans,
      words: 'firmware that differs',
      test: compareFirmware,
    }),
};

function compareFirmware({ facts, half, at }: Observation): Seen | null {
  if (half === null) return null;
  const { timeline } = facts;
  const other = otherHalf(timeline, half);
  const own = stepAt(track(timeline, half, 'firmware'), at);
  const partner = other === null ? undefined : stepAt(track(timeline, other, 'firmware'), at);
  if (own === undefined || own.value === null || partner === undefined || partner.value === null) return null;
  const holds = own.value !== partner.value;
  return {
    holds,
    statement: holds
      ? `Half ${half} reports firmware ${own.value}, half ${other} ${partner.value}.`
      : `Both halves report firmware ${own.value}.`,
    evidence: linesOfAll([own, partner]),
  };
}
