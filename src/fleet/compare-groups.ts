import { benjaminiHochberg } from '../statistics/benjamini-hochberg.ts';
import { intervalLogRank } from '../statistics/interval-log-rank.ts';
import { logRank } from '../statistics/log-rank.ts';
import { permutationChance } from '../statistics/permutation-chance.ts';
import { groupBy } from '../timeline/groups.ts';
import type { BringUpCause, CauseComparison, Fleet, GroupReview, LogRankTest } from '../vocabulary.ts';
import type { FleetLimits } from './limits.ts';
import { isExact, type SyncTime } from './sync-groups.ts';

/**
 * Whether the groups become ready alike: over all causes of bring-up, each compared within itself, and for every cause by
 * itself. A cause differs if its own test says so with all causes looked at, and only then a slower group is named: the one with the
 * longest median that differs from another, and of those that it differs from the one with the shortest. Superseded
 * attempts count as watched until then: what is compared is how soon those still tried become ready.
 *
 * The chance of one cause is that of the log-rank scores dealt out at random where a group is small: the chi-square of the plain
 * test says of one in five fleets without any difference that some cause differs (tests/calibration/alike-groups.ts).
 */
export function compareGroups(
  times: readonly SyncTime[],
  groups: readonly GroupReview[],
  limits: FleetLimits,
): Fleet['logRank'] {
  const strata = [...groupBy(times, (t) => t.cause).values()];
  const whole = overall(strata);
  if (whole === null) return null;
  const tested = strata.flatMap((own) => {
    const [first, test] = [own[0], compared(own, limits)];
    return first === undefined || test === null ? [] : [{ cause: first.cause, own, test }];
  });
  const adjusted = benjaminiHochberg(tested.map(({ test }) => test.p));
  const causes = tested.map(({ cause, own, test }, index): CauseComparison => {
    const differs = (adjusted[index] ?? 1) <= limits.falseDiscovery;
    const { chiSquare, df, p } = test;
    return { cause, chiSquare, df, p, differs, ...(differs ? extremes(own, groups, limits) : neither) };
  });
  return { chiSquare: whole.chiSquare, df: whole.df, p: whole.p, causes };
}

const neither = { slower: null, faster: null };

function overall(strata: readonly (readonly SyncTime[])[]): LogRankTest | null {
  if (!strata.every(isExact)) return intervalLogRank(strata);
  return logRank(
    strata.map((own) =>
      own.map(({ group, low, end }) => ({ group, seconds: low, isCensored: end !== 'ready' })),
    ),
  );
}

/** The test of one cause, and how much sooner than if all were alike each group was ready; below 0: later. */
function compared(
  own: readonly SyncTime[],
  { comparison }: FleetLimits,
): (LogRankTest & { readonly sooner: ReadonlyMap<string, number> }) | null {
  const found = intervalLogRank([own]);
  if (found === null) return null;
  const { chiSquare, df, groups, scores } = found;
  const least = Math.min(...[...groupBy(own, (t) => t.group).values()].map((g) => g.length));
  const p = least < comparison.large ? permutationChance(scores, comparison) : found.p;
  return { chiSquare, df, p, sooner: new Map(groups.map((g) => [g.group, g.score])) };
}

/** The slowest group that differs from others, and the fastest of those; each pair with its first is compared by itself. */
function extremes(
  own: readonly SyncTime[],
  groups: readonly GroupReview[],
  limits: FleetLimits,
): Pick<CauseComparison, 'slower' | 'faster'> {
  const times = groupBy(own, (t) => t.group);
  const fastestFirst = byMedian(groups, own[0]?.cause).filter((name) => times.has(name));
  for (const slower of fastestFirst.toReversed()) {
    const others = fastestFirst.filter((name) => name !== slower);
    const tests = others.map((name) =>
      compared([...(times.get(slower) ?? []), ...(times.get(name) ?? [])], limits),
    );
    const adjusted = benjaminiHochberg(tests.map((test) => test?.p ?? 1));
    const faster = others.find(
      (_, index) =>
        (adjusted[index] ?? 1) <= limits.falseDiscovery && (tests[index]?.sooner.get(slower) ?? 0) < 0,
    );
    if (faster !== undefined) return { slower, faster };
  }
  return neither;
}

/** The names of the groups of one cause, the shortest median first; those that never had half of them ready come last. */
function byMedian(groups: readonly GroupReview[], cause: BringUpCause | undefined): readonly string[] {
  const median = (g: GroupReview): number => g.median.value ?? Number.MAX_VALUE;
  return groups
    .filter((g) => g.cause === cause)
    .sort((a, b) => median(a) - median(b))
    .map((g) => g.group);
}
