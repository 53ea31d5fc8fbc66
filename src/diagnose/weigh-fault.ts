import type { TimelineEvent } from '../vocabulary.ts';
import { doubted, type Trouble, type Weighing } from './cause.ts';
import { coincidenceOf, sayCoincidence } from './coincidence.ts';
import { type StateTest, weighState } from './weigh-state.ts';

/**
 * Weighs a fault that may last or come and go: as a state at the failures, and by how many failures and losses followed
 * its beginnings. The two see the same failures, so the stronger one counts, not the sum.
 */
export function weighFault(
  trouble: Trouble,
  state: StateTest,
  begins: readonly TimelineEvent[],
  what: string,
): Weighing {
  const lasting = weighState(trouble, state);
  const coming = coincidenceOf(trouble, begins);
  if (coming === null || coming.decibans < trouble.limits.listDecibans) return lasting;
  const point = { statement: sayCoincidence(coming, what), evidence: coming.evidence };
  return lasting.for.length === 0
    ? { ...doubted(lasting.against), decibans: coming.decibans, for: [point] }
    : { ...lasting, decibans: Math.max(coming.decibans, lasting.decibans), for: [point, ...lasting.for] };
}
