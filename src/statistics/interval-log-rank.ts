import { aalenJohansen, type Watched } from './aalen-johansen.ts';
import { chiSquareAtMost } from './distributions.ts';
import type { Scored } from './permutation-chance.ts';
import { quadraticForm } from './quadratic-form.ts';
import { type Between, turnbull } from './turnbull.ts';

/** When something of one of the groups compared ended. */
export interface GroupInterval extends Between {
  readonly group: string;
}

/** The sum of scores of each group, sorted by name, and what they say; a score above 0: sooner than the others. */
export interface IntervalLogRank {
  readonly chiSquare: number;
  readonly df: number;
  readonly p: number;
  readonly groups: readonly Scored[];
  /** The score of every time, stratum by stratum, in the order given. */
  readonly scores: readonly Scored[];
}

/**
 * The log-rank test for ends known between two instants: Finkelstein's scores under the curve of all groups together,
 * compared by their variance over permutations (large samples). It asks that how closely times are known has nothing to
 * do with the group. Each stratum is scored within itself; `null` where nothing can be compared. Sources: Finkelstein,
 * Biometrics 42 (1986), from memory; Fay and Shaw, Exact and Asymptotic Weighted Logrank Tests for Interval Censored Data, section 4.2.
 */
export function intervalLogRank(strata: readonly (readonly GroupInterval[])[]): IntervalLogRank | null {
  const names = [...new Set(strata.flat().map(({ group }) => group))].sort();
  const totals = names.map(() => 0);
  const covariance = names.map(() => names.map(() => 0));
  const scored: Scored[] = [];
  for (const stratum of strata) {
    const scores = finkelsteinScores(stratum);
    scored.push(...stratum.map(({ group }, index) => ({ group, score: scores[index] ?? 0 })));
    const spread = scores.reduce((sum, score) => sum + score ** 2, 0) / Math.max(1, scores.length - 1);
    const counts = names.map((name) => stratum.filter(({ group }) => group === name).length);
    for (const [row, name] of names.entries()) {
      totals[row] =
        (totals[row] ?? 0) + scores.reduce((sum, s, i) => (stratum[i]?.group === name ? sum + s : sum), 0);
      const target = covariance[row] ?? [];
      for (const [column, other] of counts.entries()) {
        const apart = (row === column ? 1 : 0) - other / Math.max(1, stratum.length);
        target[column] = (target[column] ?? 0) + spread * (counts[row] ?? 0) * apart;
      }
    }
  }
  const { value, rank } = quadraticForm(totals, covariance);
  if (rank === 0) return null;
  const groups = names.map((group, index) => ({ group, score: totals[index] ?? 0 }));
  return {
    chiSquare: value,
    df: rank,
    p: Math.max(0, 1 - chiSquareAtMost(value, rank)),
    groups,
    scores: scored,
  };
}

/** `(S(low) ln S(low) - S(high) ln S(high)) / (S(low) - S(high))`, the scores of proportional hazards; they add up to 0. */
function finkelsteinScores(intervals: readonly Between[]): readonly number[] {
  const isExact = intervals.every(({ low, high }) => low === high || high === Infinity);
  return (isExact ? fromPoints(intervals) : fromPlaces(intervals)).map(([low, high]) =>
    low > high ? (entropy(low) - entropy(high)) / (low - high) : 0,
  );
}

/** The share unfinished before and after what an interval may hold. */
type Around = readonly [number, number];

function fromPlaces(intervals: readonly Between[]): readonly Around[] {
  const { places, reach } = turnbull(intervals);
  const after = [1, ...places.map(({ survivingAfter }) => survivingAfter)];
  return reach.map(([first, last]) => [after[first] ?? 1, after[last + 1] ?? 0]);
}

/** The same where all are points or were not seen to end, without the rounds that places take to come to rest. */
function fromPoints(intervals: readonly Between[]): readonly Around[] {
  const watched = intervals.map(
    ({ low, high }): Watched => ({
      seconds: low,
      end: high === Infinity ? 'censored' : 'ended',
    }),
  );
  const around = new Map<number, Around>();
  let before = 1;
  for (const { seconds, surviving } of aalenJohansen(watched)) {
    around.set(seconds, [before, surviving]);
    before = surviving;
  }
  return intervals.map(({ low, high }) => {
    const [first, last] = around.get(low) ?? [1, 0];
    return high === Infinity ? [last, 0] : [first, last];
  });
}

function entropy(surviving: number): number {
  return surviving <= 0 ? 0 : surviving * Math.log(surviving);
}
