import type { PairFacts } from '../timeline/facts.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import {
  type Attention,
  type AttentionKind,
  type AttentionReason,
  attentionKinds,
  compareText,
  type Finding,
  type PairReview,
  type Swap,
} from '../vocabulary.ts';
import type { DiagnoseLimits } from './limits.ts';
import { beginOf } from './trouble.ts';

/** What all stages say of one pair. */
export interface Considered {
  readonly facts: PairFacts;
  /** The critical findings of the pair. */
  readonly critical: readonly Finding[];
  /** The last of its swaps; `null` where the logs show none. */
  readonly swap: Pick<Swap, 'verdict' | 'open' | 'from'> | null;
  readonly review: Pick<PairReview, 'standsOut' | 'rank' | 'losses' | 'bouts' | 'readiness'>;
}

/** A reason, and where it stands among the pairs that have the same: the lowest first. */
interface Weighed extends AttentionReason {
  readonly place: number;
}

/**
 * The one order in which pairs are looked at: by the gravest of their reasons (`attentionKinds`); of one kind those with data to
 * the end of all logs first, then the longest without a ready partner, the newest finding or swap, the highest rate of bouts; then
 * by name. No order of the pairs given changes it.
 */
export function rankPairs(
  all: readonly Considered[],
  limits: DiagnoseLimits,
  rules: TimelineRules,
): readonly Attention[] {
  const end = all.reduce(
    (latest, { facts }) => Math.max(latest, facts.timeline.to),
    Number.NEGATIVE_INFINITY,
  );
  return all
    .map((one) => {
      const isStale = end - one.facts.timeline.to > limits.staleMs;
      const reasons = reasonsOf(one, isStale, limits, rules);
      return { pair: one.facts.timeline.pair, isStale, reasons };
    })
    .sort(
      (a, b) =>
        kindOf(a.reasons) - kindOf(b.reasons) ||
        Number(a.isStale) - Number(b.isStale) ||
        (a.reasons[0]?.place ?? 0) - (b.reasons[0]?.place ?? 0) ||
        compareText(a.pair, b.pair),
    )
    .map(({ pair, reasons }) => ({ pair, reasons: reasons.map(({ kind, said }) => ({ kind, said })) }));
}

function kindOf([first]: readonly AttentionReason[]): number {
  return first === undefined ? attentionKinds.length : attentionKinds.indexOf(first.kind);
}

function reasonsOf(
  one: Considered,
  isStale: boolean,
  limits: DiagnoseLimits,
  rules: TimelineRules,
): readonly Weighed[] {
  const trouble = troubleOf(one.facts, rules);
  const reasons = [
    ...trouble,
    ...criticalOf(one, limits),
    ...rateOf(one.review),
    ...swapOf(one.swap),
    // What is wrong now makes it unfit too.
    ...(trouble.length > 0 ? [] : fitOf(one.review)),
    ...(isStale ? [reason('stale', 'no data up to the end of the logs', 0)] : []),
  ];
  return reasons.sort((a, b) => kindOf([a]) - kindOf([b]));
}

function reason(kind: AttentionKind, said: string, place: number): Weighed {
  return { kind, said, place };
}

const troubleWords = {
  'not-ready': 'no ready partner',
  flapping: 'its partner drops out again and again',
  'late-light': 'its standby light was not steady in time',
  'light-again': 'its standby light flashes again',
  unknown: 'not known whether its partner is ready',
} as const;

/** The longest trouble comes first. */
function troubleOf(facts: PairFacts, rules: TimelineRules): readonly Weighed[] {
  const begun = beginOf(facts, rules);
  if (begun === null) return [];
  const { from, to } = facts.timeline;
  return [reason(begun.kind, troubleWords[begun.kind], (begun.event?.time ?? from) - to)];
}

function criticalOf({ facts, critical }: Considered, { recentMs }: DiagnoseLimits): readonly Weighed[] {
  const since = facts.timeline.to - recentMs;
  const recent = critical.filter((f) => lastOf(f) >= since).sort((a, b) => lastOf(b) - lastOf(a));
  const [newest] = recent;
  if (newest === undefined) return [];
  const words = recent.length === 1 ? 'critical' : `${recent.length} critical findings, the newest`;
  return [reason('critical', `${words}: ${asClause(newest.statement)}`, -lastOf(newest))];
}

function lastOf({ from, to }: Finding): number {
  return to ?? from ?? Number.NEGATIVE_INFINITY;
}

function rateOf({ standsOut, rank, losses, bouts }: Considered['review']): readonly Weighed[] {
  if (standsOut !== true) return [];
  const counts = `${losses} losses in ${bouts === 1 ? 'one bout' : `${bouts} bouts`}`;
  return [reason('stands-out', `loses its partner more often than the rest: ${counts}`, rank ?? 0)];
}

function swapOf(swap: Considered['swap']): readonly Weighed[] {
  if (swap === null) return [];
  const place = -swap.from;
  if (swap.verdict === 'not-verified') return [reason('not-verified', 'last swap not verified', place)];
  if (swap.open !== null) return [reason('open', 'last swap not finished', place)];
  return swap.verdict === 'inconclusive' ? [reason('inconclusive', 'last swap inconclusive', place)] : [];
}

/** Where fitness is not known nothing speaks against the pair. */
function fitOf({ readiness }: Considered['review']): readonly Weighed[] {
  if (readiness.fit !== false) return [];
  const why = readiness.reasons.map(asClause).join('; ');
  return [reason('unfit', `not ready for a swap: ${why}`, -readiness.reasons.length)];
}

/** A sentence as it stands within another. */
function asClause(sentence: string): string {
  return `${sentence.charAt(0).toLowerCase()}${sentence.slice(1)}`.replace(/\.$/, '');
}
