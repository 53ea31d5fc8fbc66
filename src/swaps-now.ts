import { pairsNamed } from './pairs-named.ts';
import { begunWork } from './procedure/begun-work.ts';
import { lastStepOf, swapNow } from './procedure/swap-now.ts';
import { withBlanks, worksOf } from './procedure/works.ts';
import { judgeSwaps, type ReadForSwaps } from './swaps-of.ts';
import type { PairFacts } from './timeline/facts.ts';
import { findSwaps } from './verify/find-swaps.ts';
import type { Job, SwapNow } from './vocabulary.ts';

/** A swap that is over is still shown so long after its last step, in milliseconds. Chosen here: a day. */
const shownMs = 86_400_000;

/**
 * The pairs in work, each at its newest stamp, the one with the newest step first; with a pair named that one, also before its first
 * removal. A swap that is over stays with `awaits: null` for a day. Throws InputError if the pair is in none of the files.
 */
export function swapsNow(read: ReadForSwaps, pair: string | null, job: Job | null): readonly SwapNow[] {
  return pairsNamed(read, pair)
    .flatMap((facts) => {
      const now = pairNow(read, facts, job, pair !== null);
      return now === null ? [] : [{ now, step: lastStepOf(facts) }];
    })
    .sort((a, b) => b.step - a.step)
    .map(({ now }) => now);
}

/** One pair as it stands; `null` where no work is under way, and none is wanted. */
function pairNow(read: ReadForSwaps, facts: PairFacts, job: Job | null, isNamed: boolean): SwapNow | null {
  const { timeline } = facts;
  const { rules, verify } = read.limits;
  const plan = job?.plan?.[timeline.pair] ?? {};
  const known = { facts, fleet: read.facts, plan, rules };
  const at = timeline.newest.time;
  const last = findSwaps(facts, { from: null, to: null }, job, verify, rules).at(-1);
  const isShown = last !== undefined && (last.open !== null || at - lastStepOf(facts) < shownMs);
  const [swap] = isShown ? judgeSwaps(read, facts, [last]) : [];
  if (last !== undefined && swap !== undefined)
    return swapNow({
      ...known,
      works: worksOf(facts, withBlanks(facts, last.changes, plan, { to: last.to, at }), plan, at),
      swap,
      isBeforeLog: false,
    });
  const { changes, isBeforeLog } = begunWork(facts, at);
  const [first, ...others] = changes;
  const works = first === undefined ? [] : worksOf(facts, [first, ...others], plan, at);
  return works.length > 0 || isNamed ? swapNow({ ...known, works, swap: null, isBeforeLog }) : null;
}
