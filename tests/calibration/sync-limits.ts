import type { Random } from '../../samples/random.ts';
import { defaultFleetLimits } from '../../src/fleet/limits.ts';
import { groupReviews, syncTimes } from '../../src/fleet/sync-groups.ts';
import type { BringUp, GroupReview } from '../../src/vocabulary.ts';
import { madeBringUp } from '../support/made-bring-up.ts';
import { normal } from './draws.ts';
import type { Study, Trial } from './study.ts';

const usualCases = 250;
/** Sync times are lognormal about 100 s with this deviation of their logarithms. */
const deviation = 0.5;

interface Manner {
  readonly name: string;
  /** Watches that end by themselves are as long as sync times, by this factor; at 1 they cut half of them off. */
  readonly watch: number;
  /** Share of attempts that are superseded, at any time up to 100 s. */
  readonly superseded: number;
  /** Seconds between two readings; 0 for a journal. */
  readonly spacing: number;
}

const manners: readonly Manner[] = [
  { name: 'journal, all ready', watch: Infinity, superseded: 0, spacing: 0 },
  // One in four: ln 1.61 is 0.674 deviations of the difference of two such logarithms.
  { name: 'journal, 25 % cut off', watch: 1.61, superseded: 0, spacing: 0 },
  { name: 'journal, 50 % cut off', watch: 1, superseded: 0, spacing: 0 },
  { name: 'journal, 20 % superseded, 25 % cut off', watch: 1.61, superseded: 0.2, spacing: 0 },
  { name: 'poll of 10 s, 25 % cut off', watch: 1.61, superseded: 0, spacing: 10 },
  { name: 'poll of 10 s, 20 % superseded', watch: Infinity, superseded: 0.2, spacing: 10 },
];

/** Limits of the median and of the 95th percentile, where not given taken as 0 and as boundless, against the true ones. */
export const syncLimits: Study = {
  name: 'sync times: true median and 95th percentile within the 95 % limits',
  run: (random, scale) =>
    manners.flatMap((manner) => [1, 6, 25, 100].flatMap((count) => trialsOf(random, manner, count, scale))),
};

const shares = [
  { name: 'median', of: ({ median }: GroupReview) => median, share: 0.5 },
  { name: '95th percentile', of: ({ p95 }: GroupReview) => p95, share: 0.95 },
] as const;

function trialsOf(random: Random, manner: Manner, count: number, scale: number): readonly Trial[] {
  const cases = Math.max(20, Math.round(usualCases * scale));
  const hits = shares.map(() => 0);
  for (let one = 0; one < cases; one += 1) {
    const attempts = Array.from({ length: count }, () => attempt(random, manner));
    const [group] = groupReviews(
      syncTimes(attempts, () => 'all'),
      defaultFleetLimits,
    );
    for (const [index, { of, share }] of shares.entries()) {
      const [truth, found] = [
        trueTime(share / (1 - manner.superseded)),
        group === undefined ? null : of(group),
      ];
      if ((found?.low ?? 0) <= truth && truth <= (found?.high ?? Infinity))
        hits[index] = (hits[index] ?? 0) + 1;
    }
  }
  return shares.map(({ name }, index) => ({
    setting: `${manner.name}, n = ${count}, ${name}`,
    promised: { low: 0.95, high: 1 },
    hits: hits[index] ?? 0,
    cases,
  }));
}

/** By when `share` of those that are not superseded are ready; never where that is more than all. */
function trueTime(share: number): number {
  // Standard normal quantiles of 0.5, 0.95 and 0.625 (tables).
  const deviates: Readonly<Record<string, number>> = { 0.5: 0, 0.95: 1.644854, 0.625: 0.318639 };
  const deviate = deviates[share];
  return deviate === undefined ? Infinity : 100 * Math.exp(deviation * deviate);
}

function attempt(random: Random, { watch, superseded, spacing }: Manner): BringUp {
  const sync = 100 * Math.exp(deviation * normal(random));
  const until = watch === Infinity ? Infinity : watch * 100 * Math.exp(deviation * normal(random));
  const replacedAt = random() < superseded ? 100 * random() : Infinity;
  const end = Math.min(sync, until, replacedAt);
  if (end < sync || replacedAt < Infinity)
    return madeBringUp({
      seconds: Math.min(until, replacedAt),
      outcome: replacedAt < until ? 'superseded' : 'unfinished',
    });
  if (spacing === 0) return madeBringUp({ seconds: sync, outcome: 'settled' });
  const phase = random() * spacing;
  const middle = (Math.floor((sync + phase) / spacing) + 0.5) * spacing - phase;
  return madeBringUp({ seconds: middle, outcome: 'settled', within: spacing / 2 });
}
