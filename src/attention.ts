import { type Considered, rankPairs } from './diagnose/attention.ts';
import { lossFigures } from './fleet/pair-figures.ts';
import { type LossesOf, rateLosses } from './fleet/rate-losses.ts';
import { readinessForSwap, standingOf } from './fleet/readiness.ts';
import type { Limits } from './limits.ts';
import type { PairFacts } from './timeline/facts.ts';
import { groupBy } from './timeline/groups.ts';
import type { Attention, Finding, Swap } from './vocabulary.ts';

/**
 * All pairs in the order in which they need attention, with the reasons; the same for every view and command. `swaps` are those of
 * all pairs as they were judged, of each pair in the order of time: its last one counts.
 */
export function attentionOf(
  facts: readonly PairFacts[],
  findings: readonly Finding[],
  swaps: readonly Swap[],
  limits: Limits,
): readonly Attention[] {
  const lastSwaps = new Map(swaps.map((swap) => [swap.pair, swap]));
  const { rates } = rateLosses(facts.map(lossesOf), limits.fleet);
  const critical = groupBy(
    findings.filter((f) => f.severity === 'critical'),
    (f) => f.pair ?? '',
  );
  const all = facts.flatMap((one, index): readonly Considered[] => {
    const rate = rates[index];
    if (rate === undefined) return [];
    const readiness = readinessForSwap(standingOf(one, limits.rules), limits.fleet.readyMs);
    const { pair } = one.timeline;
    return [
      {
        facts: one,
        critical: critical.get(pair) ?? [],
        swap: lastSwaps.get(pair) ?? null,
        review: { ...rate, readiness },
      },
    ];
  });
  return rankPairs(all, limits.diagnose, limits.rules);
}

function lossesOf(facts: PairFacts): LossesOf {
  const { pair, observed } = facts.timeline;
  return { pair, observed, losses: lossFigures(facts), bouts: facts.bouts };
}
