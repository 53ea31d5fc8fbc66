import { clip, total, unite } from '../timeline/coverage.ts';
import { groupBy } from '../timeline/groups.ts';
import { countUntil } from '../timeline/tracks.ts';
import type { ComparedPair, Fleet, Interval } from '../vocabulary.ts';

/** What is said of a pair whose halves differ, and of one whose halves never said: no groups to compare. */
export const mixed = 'mixed';
export const notKnown = 'not known';

/** A pair while it was in one group: when it was observed there, and what it lost there. */
export interface Membership {
  readonly pair: string;
  readonly group: string;
  readonly observed: readonly Interval[];
  readonly observedSeconds: number;
  readonly losses: number;
  readonly bouts: ComparedPair['bouts'];
}

/** What of a pair tells of its groups. */
export type Grouped = Pick<ComparedPair, 'site' | 'from' | 'to' | 'identities'>;

/** Every pair in every group that it was in. Firmware and model change: time and bouts count for the group of their time. */
export function membershipsOf(
  fleet: readonly (Grouped & Pick<ComparedPair, 'pair' | 'observed' | 'losses' | 'bouts'>)[],
  by: Fleet['by'],
): readonly Membership[] {
  return fleet.flatMap((facts) => {
    const { pair, bouts, losses } = facts;
    const spans = groupSpans(facts, by);
    const isIn = (own: readonly GroupSpan[], time: number): boolean =>
      own.some(({ from, to }) => time >= from && (time < to || to === facts.to));
    return [...groupBy(spans, (span) => span.group)].map(([group, own]): Membership => {
      const observed = unite(own.flatMap(({ from, to }) => [...clip(facts.observed, from, to)]));
      return {
        pair,
        group,
        observed,
        observedSeconds: total(observed) / 1000,
        losses: losses.filter((l) => l.kind === 'counted' && isIn(own, l.time)).length,
        bouts: bouts.filter((bout) => isIn(own, bout.time)),
      };
    });
  });
}

/** A stretch of a timeline in which its pair was in one group. */
export interface GroupSpan extends Interval {
  readonly group: string;
}

/**
 * The groups of a pair over its whole timeline, in the order of time. The firmware or model of a pair is that of its halves: what the one says while the other
 * says nothing, `mixed` where they differ.
 */
export function groupSpans(pair: Grouped, by: Fleet['by']): readonly GroupSpan[] {
  const { from, to, site, identities } = pair;
  if (by === 'site') return [{ group: site ?? notKnown, from, to }];
  const tracks = identities.filter(({ signal }) => signal === by).map(({ steps }) => steps);
  const changes = tracks.flatMap((steps) => steps.map((step) => step.time)).filter((t) => t > from && t < to);
  const begins = [from, ...new Set(changes.sort((a, b) => a - b))];
  const spans: GroupSpan[] = [];
  for (const [index, begin] of begins.entries()) {
    const values = tracks.map((steps) => {
      // What the log's first reading says was so when the log began.
      const first = steps[0]?.initial === true ? steps[0] : undefined;
      return (steps[countUntil(steps, begin) - 1] ?? first)?.value ?? null;
    });
    const known = new Set(values.filter((value) => value !== null));
    const [only = notKnown] = known;
    const group = known.size > 1 ? mixed : only;
    const last = spans.at(-1);
    const end = begins[index + 1] ?? to;
    if (last?.group === group) spans[spans.length - 1] = { ...last, to: end };
    else spans.push({ group, from: begin, to: end });
  }
  return spans;
}
