import type { Membership } from './group-spans.ts';
import type { FleetLimits } from './limits.ts';

/** In so many times the gap within a storm a bout of any pair is to be expected: bouts of many pairs lie close by chance. */
const chanceGaps = 10;

/**
 * The same pairs with the first bout only of those that follow each other closely over all pairs: what strikes many at once, as
 * an upset of the plant, is one event, and none of a firmware. Closely is within `stormMs`, in a large fleet within a tenth of the
 * mean time between two bouts.
 */
export function withoutStorms(
  members: readonly Membership[],
  { stormMs }: FleetLimits,
): readonly Membership[] {
  const all = members.flatMap((m) => [...m.bouts]).sort((a, b) => a.time - b.time);
  const [first, last] = [all.at(0)?.time ?? 0, all.at(-1)?.time ?? 0];
  const gap = Math.min(stormMs, (last - first) / (chanceGaps * all.length));
  const kept = new Set(
    all.filter((bout, index) => bout.time - (all[index - 1]?.time ?? Number.NEGATIVE_INFINITY) > gap),
  );
  return members.map((m) => ({ ...m, bouts: m.bouts.filter((bout) => kept.has(bout)) }));
}

/** Whether so many bouts followed those of another pair closely that the pairs are not independent. */
export function areStruckTogether(members: readonly Membership[], limits: FleetLimits): boolean {
  const all = boutsIn(members);
  const repeated = all - boutsIn(withoutStorms(members, limits));
  return repeated >= 2 && repeated > limits.struckShare * all;
}

function boutsIn(members: readonly Membership[]): number {
  return members.reduce((sum, m) => sum + m.bouts.length, 0);
}
