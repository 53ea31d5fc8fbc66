import type { Limits } from './limits.ts';
import type { PairFacts } from './timeline/facts.ts';
import { staffOf } from './timeline/staff.ts';
import type { Staff } from './vocabulary.ts';

const hourMs = 3_600_000;

/** The staff of a pair over the hour up to its newest stamp, shorter where its log is; `null` where no log names it. */
export function lastHour(
  { facts, limits }: { readonly facts: readonly PairFacts[]; readonly limits: Limits },
  pair: string,
): Staff | null {
  const found = facts.find((f) => f.timeline.pair === pair);
  if (found === undefined) return null;
  const { from, to } = found.timeline;
  return staffOf(found, Math.max(from, to - hourMs), to, limits.rules);
}
