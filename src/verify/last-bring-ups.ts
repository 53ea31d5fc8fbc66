import { between, exactly } from '../timeline/durations.ts';
import { linesOf } from '../timeline/evidence.ts';
import type { ModuleChange } from '../timeline/module-changes.ts';
import { type BringUp, sayDuration } from '../vocabulary.ts';
import { type Outcome, onceOver, type SwapCase, worstOf } from './check.ts';

/** Judges the last bring-up of each new module; one that has none is undecided, one that never came fails past its limit. */
export function judgeLastBringUps(swap: SwapCase, judge: (bringUp: BringUp) => Outcome): Outcome {
  const lastOf = new Map(swap.changes.map((change) => [change.half, change]));
  const [first, ...rest] = [...lastOf.values()].map((change): Outcome => {
    const { half, inserted } = change;
    if (inserted === null) return judgeAbsent(swap, change);
    const last = swap.bringUps.findLast((b) => b.half === half && b.start.time >= inserted.earliest);
    return last === undefined
      ? {
          status: 'inconclusive',
          statement: `No bring-up of the new module in half ${half} was seen.`,
          evidence: linesOf(inserted),
        }
      : beforeReflash(swap, half, judge(last));
  });
  return first === undefined
    ? {
        status: 'inconclusive',
        statement: 'No new module was seen.',
        evidence: linesOf(swap.changes[0].removed),
      }
    : worstOf([first, ...rest]);
}

/** A module that is yet to be reflashed comes up again after that: what it did with the old firmware decides nothing. */
function beforeReflash(swap: SwapCase, half: string, outcome: Outcome): Outcome {
  return swap.open?.awaits === 'reflash' && swap.open.half === half ? onceOver(swap, outcome) : outcome;
}

/** Nothing was put in by the end of the log. */
export function judgeAbsent({ to, limits }: SwapCase, { half, removed }: ModuleChange): Outcome {
  const watched = between(removed, exactly(Math.max(to, removed.time)));
  return {
    status: watched.low > limits.roleSeconds ? 'fail' : 'inconclusive',
    statement: `No module was put into half ${half} within the ${sayDuration(watched.seconds)} observed.`,
    evidence: linesOf(removed),
  };
}
