import type { InputError } from './import/bytes/input-error.ts';
import type { Limits } from './limits.ts';
import type { PairFacts } from './timeline/facts.ts';
import type { SwapCase } from './verify/check.ts';
import { checks } from './verify/checks.ts';
import { findSwaps, type SwapFilter } from './verify/find-swaps.ts';
import { unreadOf } from './verify/unread.ts';
import { verifySwap } from './verify/verify-swap.ts';
import type { ImportedFile, Job, Swap } from './vocabulary.ts';

/** What was read, as far as swaps are judged by it. */
export interface ReadForSwaps {
  readonly limits: Limits;
  readonly files: readonly ImportedFile[];
  readonly facts: readonly PairFacts[];
  readonly failures: readonly InputError[];
}

/** The swaps of one pair, each judged by all checks, in the order of time. */
export function swapsOf(
  read: ReadForSwaps,
  facts: PairFacts,
  filter: SwapFilter,
  job: Job | null,
): readonly Swap[] {
  const { limits } = read;
  const found = findSwaps(facts, filter, job, limits.verify, limits.rules);
  // Of very many pairs few were swapped: what was left out is looked for only where something is judged.
  return found.length === 0 ? [] : judgeSwaps(read, facts, found);
}

/** Swaps of one pair that were found, judged by all checks. */
export function judgeSwaps(
  { files, failures }: ReadForSwaps,
  facts: PairFacts,
  found: readonly SwapCase[],
): readonly Swap[] {
  const failed = failures.map((f) => f.where);
  const unread = unreadOf(files, failed, facts.timeline.pair);
  return found.map((swap) => verifySwap(swap, checks, unread));
}
