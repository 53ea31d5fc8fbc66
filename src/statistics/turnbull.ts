import { firstThatHolds } from './first-that-holds.ts';
/** Something ended after `low` and not after `high`, in seconds; equal: just then; `high` `Infinity`: not seen to end. */
export interface Between {
  readonly low: number;
  readonly high: number;
}

/** Probability that the end lies after `low` and by `high`; where in there is not known. `high` is `null` for never seen. */
export interface Place {
  readonly low: number;
  readonly high: number | null;
  readonly probability: number;
  /** The share still unfinished at `high`. */
  readonly survivingAfter: number;
}

/** The first and the last place that an interval may hold. */
type Reach = readonly [number, number];

/** The places, and for each interval given the first and last place it may hold. */
export interface Turnbull {
  readonly places: readonly Place[];
  readonly reach: readonly Reach[];
}

/** A bound of an interval: at one instant, a closed lower bound comes before an upper bound, an open lower one after it. */
interface Bound {
  readonly at: number;
  readonly order: number;
  readonly isLow: boolean;
}

const [closedLow, closedHigh, openLow] = [0, 1, 2];
/** The largest change of a probability at which the iteration ends, and the most rounds it takes. */
const enough = { change: 1e-9, rounds: 5_000 };

/**
 * The share unfinished over time where ends are known only between two instants: the nonparametric maximum likelihood
 * estimate, by self-consistency. No place for no interval. `competing` are times, in seconds, at which others met something
 * after which they cannot end any more: they stay unfinished. An interval that was not seen to end may hold any place after
 * `low`, or a competing end after it, of which there are known only those that others met. Sources: Turnbull, The empirical
 * distribution function with arbitrarily grouped, censored and truncated data, Journal of the Royal Statistical Society B 38
 * (1976); Hudgens, Satten and Longini, Biometrics 57 (2001), with competing ends (both from memory).
 */
export function turnbull(intervals: readonly Between[], competing: readonly number[] = []): Turnbull {
  const lows = intervals.map(lowBound);
  const highs = intervals.map(({ high }): Bound => ({ at: high, order: closedHigh, isLow: false }));
  const ends = innermost([...lows, ...highs].sort(compare));
  const reach = intervals.map((_, index): readonly [number, number] => [
    firstThatHolds(ends, ([low]) => isNotBefore(low, lows[index])),
    firstThatHolds(ends, ([, high]) => isAfter(high, highs[index])) - 1,
  ]);
  const points = [...new Set(competing)].sort((a, b) => a - b);
  const probabilities = selfConsistent(
    [
      ...intervals.map((interval, index) => reachesOf(interval, reach[index] ?? [0, 0], ends.length, points)),
      ...competing.map((time) => onlyAt(ends.length + points.indexOf(time))),
    ],
    ends.length + points.length,
  );
  const never = probabilities.slice(ends.length).reduce((sum, share) => sum + share, 0);
  let surviving = 1;
  const places = ends.map(([low, high], index): Place => {
    const probability = probabilities[index] ?? 0;
    surviving = index === ends.length - 1 ? never : Math.max(never, surviving - probability);
    return {
      low: low.at,
      high: high.at === Infinity ? null : high.at,
      probability,
      survivingAfter: surviving,
    };
  });
  return { places, reach };
}

function onlyAt(index: number): readonly Reach[] {
  return [[index, index]];
}

/** What an interval may hold: its places, and of the competing ends, which are numbered after the `count` places, those after it. */
function reachesOf(
  { low, high }: Between,
  own: Reach,
  count: number,
  points: readonly number[],
): readonly Reach[] {
  const first = high === Infinity ? firstThatHolds(points, (point) => point > low) : points.length;
  return first < points.length ? [own, [count + first, count + points.length - 1]] : [own];
}

/**
 * Between which instants the time lies by which `share` has ended; both `null` without a place, `high` also where it was
 * not seen to end.
 */
export function turnbullQuantile(
  places: readonly Place[],
  share: number,
): { readonly low: number | null; readonly high: number | null } {
  const place = places.find(({ survivingAfter }) => survivingAfter <= 1 - share + 1e-9);
  return { low: place?.low ?? null, high: place?.high ?? null };
}

function lowBound({ low, high }: Between): Bound {
  return { at: low, order: low === high ? closedLow : openLow, isLow: true };
}

function compare(first: Bound, second: Bound): number {
  return first.at === second.at ? first.order - second.order : first.at < second.at ? -1 : 1;
}

function isNotBefore(bound: Bound, other: Bound | undefined): boolean {
  return other !== undefined && compare(bound, other) >= 0;
}

function isAfter(bound: Bound, other: Bound | undefined): boolean {
  return other !== undefined && compare(bound, other) > 0;
}

/** A lower bound with an upper one right after it: only there can the estimate put anything. */
function innermost(sorted: readonly Bound[]): readonly (readonly [Bound, Bound])[] {
  return sorted.flatMap((low, index) => {
    const high = sorted[index + 1];
    return low.isLow && high !== undefined && !high.isLow ? [[low, high] as const] : [];
  });
}

/**
 * Shares each interval out among its places as they stand, until they stand still. Plain rounds come to rest slowly, so
 * every two are followed by a leap along their curve. Source: Varadhan and Roland, Scandinavian Journal of Statistics 35
 * (2008), squared extrapolation, third step length (from memory).
 */
function selfConsistent(reach: readonly (readonly Reach[])[], count: number): readonly number[] {
  let shares: readonly number[] = Array.from({ length: count }, () => 1 / count);
  for (let round = 0; round < enough.rounds; round += 1) {
    const once = shareOut(reach, shares);
    const twice = shareOut(reach, once);
    const change = twice.reduce(
      (most, share, index) => Math.max(most, Math.abs(share - (once[index] ?? 0))),
      0,
    );
    if (change < enough.change) return twice;
    shares = shareOut(reach, leap(shares, once, twice));
  }
  return shares;
}

/** Where the curve through three rounds leads; back to the third where that lies outside 0 to 1. */
function leap(
  shares: readonly number[],
  once: readonly number[],
  twice: readonly number[],
): readonly number[] {
  const first = shares.map((share, index) => (once[index] ?? 0) - share);
  const bend = first.map((step, index) => (twice[index] ?? 0) - (once[index] ?? 0) - step);
  const size = (vector: readonly number[]): number => Math.hypot(...vector);
  for (let stride = size(first) / size(bend); stride > 1 && stride < Infinity; stride = (stride + 0.99) / 2) {
    const landed = shares.map(
      (share, index) => share + 2 * stride * (first[index] ?? 0) + stride ** 2 * (bend[index] ?? 0),
    );
    if (landed.every((share, index) => share > 0.01 * (twice[index] ?? 0))) return landed;
  }
  return twice;
}

/** One round. Running sums make it linear: an interval reaches places that follow each other, in one run or two. */
function shareOut(reach: readonly (readonly Reach[])[], shares: readonly number[]): readonly number[] {
  const below = [0];
  for (const share of shares) below.push((below.at(-1) ?? 0) + share);
  const weights = shares.map(() => 0);
  for (const runs of reach) {
    let held = 0;
    for (const [first, last] of runs) held += (below[last + 1] ?? 0) - (below[first] ?? 0);
    for (const [first, last] of runs) {
      weights[first] = (weights[first] ?? 0) + 1 / held;
      if (last + 1 < weights.length) weights[last + 1] = (weights[last + 1] ?? 0) - 1 / held;
    }
  }
  let weight = 0;
  return shares.map((share, index) => {
    weight += weights[index] ?? 0;
    return Math.max(0, (share * weight) / reach.length);
  });
}
