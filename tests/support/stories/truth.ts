import type { Story } from '../../../samples/story.ts';
import type { CheckId } from './check-ids.ts';
import { checksOf, type Verity } from './check-rules.ts';
import { type SwapFacts, swapFacts } from './swap-facts.ts';

/** What is true of a swap story: its instants, and which checks hold. */
export interface Truth extends SwapFacts {
  readonly checks: Readonly<Record<CheckId, Verity>>;
}

export function truthOf(story: Story): Truth {
  const facts = swapFacts(story);
  return { ...facts, checks: checksOf(facts) };
}
