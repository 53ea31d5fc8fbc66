import { chiSquareAtMost } from './distributions.ts';
import { quadraticForm } from './quadratic-form.ts';

/** A time of one of the groups compared, in seconds: how long something took, or (censored) was watched without having ended. */
export interface GroupTime {
  readonly seconds: number;
  readonly isCensored: boolean;
  readonly group: string;
}

/** What a group had and would have had if it were like the others; no matter what orders them, `groups` is sorted by name. */
export interface LogRank {
  readonly chiSquare: number;
  readonly df: number;
  /** Chance of groups as unlike as these if they were alike. */
  readonly p: number;
  readonly groups: readonly {
    readonly group: string;
    readonly observed: number;
    readonly expected: number;
  }[];
}

interface Sums {
  readonly observed: number[];
  readonly expected: number[];
  readonly covariance: number[][];
}

/**
 * Whether groups finish alike: the log-rank test, each stratum (a list of times) compared within itself and the sums put
 * together; one stratum for the plain test. `null` where nothing can be compared: fewer than two groups, or no end while
 * two were watched. Sources: Mantel, Cancer Chemotherapy Reports 50 (1966); Peto and Peto, Journal of the Royal
 * Statistical Society A 135 (1972), both from memory.
 */
export function logRank(strata: readonly (readonly GroupTime[])[]): LogRank | null {
  const names = [...new Set(strata.flat().map(({ group }) => group))].sort();
  const zeros = (): number[] => names.map(() => 0);
  const sums: Sums = { observed: zeros(), expected: zeros(), covariance: names.map(zeros) };
  for (const stratum of strata) addStratum(sums, stratum, names);
  const deviation = sums.observed.map((observed, index) => observed - (sums.expected[index] ?? 0));
  const { value, rank } = quadraticForm(deviation, sums.covariance);
  if (rank === 0) return null;
  return {
    chiSquare: value,
    df: rank,
    p: Math.max(0, 1 - chiSquareAtMost(value, rank)),
    groups: names.map((group, index) => ({
      group,
      observed: sums.observed[index] ?? 0,
      expected: sums.expected[index] ?? 0,
    })),
  };
}

function addStratum(sums: Sums, stratum: readonly GroupTime[], names: readonly string[]): void {
  const positions = new Map(names.map((name, index) => [name, index]));
  const sorted = [...stratum].sort((a, b) => a.seconds - b.seconds);
  const watched = names.map((name) => sorted.filter(({ group }) => group === name).length);
  let index = 0;
  while (index < sorted.length) {
    const seconds = sorted[index]?.seconds;
    const ended = names.map(() => 0);
    const left = names.map(() => 0);
    for (; index < sorted.length && sorted[index]?.seconds === seconds; index += 1) {
      const { group = '', isCensored = true } = sorted[index] ?? {};
      const position = positions.get(group) ?? 0;
      left[position] = (left[position] ?? 0) + 1;
      if (!isCensored) ended[position] = (ended[position] ?? 0) + 1;
    }
    addTable(sums, watched, ended);
    for (const [position, count] of left.entries()) watched[position] = (watched[position] ?? 0) - count;
  }
}

/** The ends of one instant: with the margins held, their number in each group is hypergeometric. */
function addTable(sums: Sums, watched: readonly number[], ended: readonly number[]): void {
  const all = watched.reduce((sum, count) => sum + count, 0);
  const ends = ended.reduce((sum, count) => sum + count, 0);
  if (ends === 0) return;
  const spread = all > 1 ? (ends * (all - ends)) / (all - 1) : 0;
  for (const [row, count] of watched.entries()) {
    const share = count / all;
    sums.observed[row] = (sums.observed[row] ?? 0) + (ended[row] ?? 0);
    sums.expected[row] = (sums.expected[row] ?? 0) + ends * share;
    const target = sums.covariance[row] ?? [];
    for (const [column, other] of watched.entries())
      target[column] = (target[column] ?? 0) + spread * share * ((row === column ? 1 : 0) - other / all);
  }
}
