import { type Dealing, dealtChance, type Scored } from '../statistics/dealt-labels.ts';
import { finkelsteinScores, type GroupInterval } from '../statistics/interval-log-rank.ts';
import { logRankScores } from '../statistics/log-rank.ts';
import { groupBy } from '../timeline/groups.ts';

/** When chances are found by dealing: where a group is smaller than `largeGroup` in a stratum. */
export interface GroupDealing extends Dealing {
  readonly largeGroup: number;
}

/**
 * The chance of sync times as unlike as these between groups that are alike, each stratum compared within itself, by the
 * scores of the log-rank test. `null` where every group is so large that chi-square holds, or where nothing differs: with
 * groups of a few attempts chi-square calls twice as many different as it should.
 */
export function chanceOfSmallGroups(
  strata: readonly (readonly GroupInterval[])[],
  dealing: GroupDealing,
): number | null {
  const isLarge = strata.every((own) =>
    [...groupBy(own, (t) => t.group).values()].every((group) => group.length >= dealing.largeGroup),
  );
  return isLarge ? null : dealtChance(strata.map(scored), dealing);
}

function scored(times: readonly GroupInterval[]): readonly Scored[] {
  const isExact = times.every((t) => t.low === t.high || t.high === Number.POSITIVE_INFINITY);
  const scores = isExact
    ? logRankScores(times.map((t) => ({ seconds: t.low, isCensored: t.high === Number.POSITIVE_INFINITY })))
    : finkelsteinScores(times);
  return times.map(({ group }, index) => ({ group, score: scores[index] ?? 0 }));
}
