import { endLines } from '../timeline/evidence.ts';
import type { Switchover } from '../vocabulary.ts';
import { type Outcome, type SwapCase, worstOf } from './check.ts';

/** Judges every switchover of the swap; without one the check holds and says so. */
export function judgeEachSwitchover(swap: SwapCase, judge: (switchover: Switchover) => Outcome): Outcome {
  const [first, ...rest] = swap.switchovers.map(judge);
  if (first !== undefined) return worstOf([first, ...rest]);
  return {
    status: 'pass',
    statement: 'None: there was no switchover in this swap.',
    evidence: endLines(swap.facts.timeline),
  };
}

/** The half a switchover went to, as it follows the word; empty where no line says which. */
export function toHalfWords(toHalf: string | null): string {
  return toHalf === null ? '' : ` to half ${toHalf}`;
}
