import type { Story } from '../../../samples/story.ts';
import { type CheckId, checkRules } from './check-rules.ts';
import { type SwapFacts, swapFacts } from './swap-facts.ts';
import type { Verity } from './verity.ts';

/** One check as it truly is. */
export interface TrueCheck extends Verity {
  readonly id: CheckId;
}

/** What is true of a swap story: its instants, and which checks hold. */
export interface Truth extends SwapFacts {
  readonly checks: readonly TrueCheck[];
}

/** The truth of a story; the checks in the order of the work. */
export function truthOf(story: Story): Truth {
  const facts = swapFacts(story);
  return { ...facts, checks: checkIds.map((id) => ({ id, ...checkRules[id](facts) })) };
}

/** The checks of a swap in the order of the work. */
export const checkIds: readonly CheckId[] = keysOf(checkRules);

function keysOf<T extends object>(of: T): readonly (keyof T)[] {
  const keys: (keyof T)[] = [];
  for (const key in of) keys.push(key);
  return keys;
}
