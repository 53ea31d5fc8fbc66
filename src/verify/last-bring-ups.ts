import { linesOf } from '../timeline/evidence.ts';
import type { BringUp } from '../vocabulary.ts';
import { type Outcome, type SwapCase, worstOf } from './check.ts';

/** Judges the last bring-up of each new module; one that has none is undecided. */
export function judgeLastBringUps(swap: SwapCase, judge: (bringUp: BringUp) => Outcome): Outcome {
  const lastOf = new Map(swap.changes.map((change) => [change.half, change]));
  const [first, ...rest] = [...lastOf.values()].map(({ half, inserted }): Outcome => {
    const last = swap.bringUps.findLast((b) => b.half === half && b.start.time >= inserted.earliest);
    return last === undefined
      ? {
          status: 'inconclusive',
          statement: `No bring-up of the new module in half ${half} was seen.`,
          evidence: linesOf(inserted),
        }
      : judge(last);
  });
  return first === undefined
    ? {
        status: 'inconclusive',
        statement: 'No new module was seen.',
        evidence: linesOf(swap.changes[0].removed),
      }
    : worstOf([first, ...rest]);
}
