import {
  type BringUpCause,
  type Estimate,
  type FleetInBrief,
  type GroupReview,
  sayChance,
  sayDuration,
} from '../vocabulary.ts';
import { causeWords } from './outcome-words.ts';

/** The share of attempts of a figure. */
const shares = { median: 0.5, p95: 0.95 };

/**
 * The median or the 95th percentile of sync times with its limits, or why there is none: so many were superseded that it is not
 * reached however the others ended, or there is not enough data.
 */
export function sayQuantile(group: GroupReview, which: 'median' | 'p95'): string {
  const { value, low, high } = group[which];
  if (value !== null) return `${sayDuration(value)} (${limitsSaid(low, high)})`;
  const most = group.attempts - group.superseded;
  return most < shares[which] * group.attempts ? 'not reached' : `not enough data (n = ${group.attempts})`;
}

function limitsSaid(low: number | null, high: number | null): string {
  if (low === null && high === null) return 'limits: not enough data';
  if (high === null) return `at least ${sayDuration(low ?? 0)}, upper limit: not enough data`;
  if (low === null) return `at most ${sayDuration(high)}, lower limit: not enough data`;
  return `${sayDuration(low)} to ${sayDuration(high)}`;
}

/** The time by which 95 in 100 are ready with 95 % confidence, or the sample that such a limit would need. */
export function saySure({ tolerance9595, neededFor9595, attempts }: GroupReview): string {
  if (tolerance9595 !== null) return sayDuration(tolerance9595);
  return attempts < neededFor9595
    ? `needs ${neededFor9595} attempts, there ${attempts === 1 ? 'is one' : `are ${attempts}`}`
    : 'not reached';
}

/** How many attempts of a group were superseded and how many not seen to end; empty without one. */
export function sayNotReady({ superseded, censored }: Pick<GroupReview, 'superseded' | 'censored'>): string {
  return [
    ...(superseded === 0 ? [] : [`${superseded} superseded`]),
    ...(censored === 0 ? [] : [`${censored} not observed to the end`]),
  ].join(', ');
}

/** Whether groups differ, and after which cause; where one is slower than another, by how much. */
export function syncSentences(fleet: FleetInBrief): readonly string[] {
  const { logRank, by, groups } = fleet;
  if (logRank === null) return [`Sync times by ${by} cannot be compared: ${whyNotCompared(groups)}.`];
  const differing = logRank.causes.filter((c) => c.differs);
  if (differing.length === 0) return [`Sync times by ${by} differ no more than chance explains.`];
  return differing.map(({ cause, slower, faster }) => {
    const own = (name: string | null): GroupReview | undefined =>
      groups.find((g) => g.cause === cause && g.group === name);
    const [slow, fast] = [own(slower), own(faster)];
    return slow === undefined || fast === undefined
      ? `Sync times by ${by} differ after a ${causeWords[cause]}.`
      : `After a ${causeWords[cause]} ${slow.group} takes longer to become ready than ${fast.group}${apart(slow, fast)}.`;
  });
}

/** How far two groups are apart: by their medians, else by their 95th percentiles; empty where neither shows it. */
function apart(slow: GroupReview, fast: GroupReview): string {
  const isApart = (a: Estimate, b: Estimate): boolean =>
    a.value !== null && b.value !== null && a.value > b.value;
  const said = (a: Estimate, b: Estimate): string =>
    `${sayDuration(a.value ?? 0)}, against ${sayDuration(b.value ?? 0)}`;
  if (isApart(slow.median, fast.median)) return `: median ${said(slow.median, fast.median)}`;
  return isApart(slow.p95, fast.p95) ? `: 95th percentile ${said(slow.p95, fast.p95)}` : '';
}

function whyNotCompared({ length }: FleetInBrief['groups']): string {
  if (length === 0) return 'the logs show no bring-up';
  return length === 1 ? 'there is one group' : 'no attempts overlap';
}

/** The log-rank test of every cause; empty where nothing was compared. */
export function sayTests({ logRank }: FleetInBrief): string {
  if (logRank === null) return '';
  const test = (cause: BringUpCause, df: number, chiSquare: number, p: number): string =>
    `after a ${causeWords[cause]} chi-square ${chiSquare.toFixed(1)} with ${df} ${df === 1 ? 'degree' : 'degrees'} of freedom, ${sayChance(p)}`;
  return `Log-rank test: ${logRank.causes.map((c) => test(c.cause, c.df, c.chiSquare, c.p)).join('; ')}.`;
}

/** How the sync times were computed. */
export const syncTimesComputed = [
  'Counted is the time from the start of each bring-up to its first ready partner, n for each group and cause; a superseded attempt stays in the count as never ready, one not observed to the end counts as long as it was observed.',
  'Times known exactly: Aalen and Johansen (1978) with limits of Fay, Brittain and Proschan (2013); times known between two readings: Turnbull (1976) with exact binomial limits; the 95/95 tolerance limit is that of Wilks (1941).',
  'Groups are compared by the log-rank test (Finkelstein, 1986) for each cause, by permutation below 30 attempts, at a false discovery rate of 5 %.',
  'Wrong if the logs of slow attempts end sooner than others, or if one cabinet makes up most of a group.',
].join(' ');
