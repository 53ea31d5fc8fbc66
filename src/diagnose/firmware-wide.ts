import { decibans, evidenceBound } from '../statistics/evidence-bound.ts';
import { fisherExact } from '../statistics/fisher-exact.ts';
import { type Counted, type RateRatio, rateRatio } from '../statistics/rate-ratio.ts';
import { isFailed } from '../timeline/attempts.ts';
import { clip, total } from '../timeline/coverage.ts';
import { linesOf } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { standbyAt } from '../timeline/standby.ts';
import { track, valueAt } from '../timeline/tracks.ts';
import {
  type NonEmpty,
  type Point,
  type SourceLine,
  sayDuration,
  type TimelineEvent,
} from '../vocabulary.ts';
import { type Cause, capped, doubted, type Trouble } from './cause.ts';

/**
 * Least evidence with which a good engineer would name it, this pair not counted: every one of three other pairs with the firmware had
 * a loss or a failed attempt in the time of the files and none of three without it, or as rare by Fisher's exact test (seven pairs
 * with ours); or bouts of losses and failures on two such pairs that come more often than with other firmware by as much. Losses
 * of one pair within 12 h are one bout: one trouble brings many. Common practice, no source.
 */
export const firmwareWide: Cause = {
  meta: {
    id: 'firmware-wide',
    title: 'Other pairs with this firmware have the same trouble',
    kind: 'pattern',
    explains: 'A firmware fault that no work on this pair will fix.',
    shows:
      'Other pairs with the firmware lose their partner or fail to synchronise more often than those with another.',
    needs: [['firmware']],
    next: 'Do not swap modules for this: report firmware, pairs and times to the maker, and postpone further reflashes to it until they have answered.',
  },
  weigh(trouble) {
    const { facts, half, to } = trouble;
    const firmware = half === null ? null : valueAt(track(facts.timeline, half, 'firmware'), to);
    if (firmware === null) return doubted([]);
    const others = trouble.fleet.filter((f) => f !== facts).map((f) => troubleWith(f, firmware, trouble));
    if (others.length === 0)
      return doubted([{ statement: 'There is no other pair in the files.', evidence: trouble.evidence }]);
    const own = sumOf(others, 'own');
    const other = sumOf(others, 'other');
    const ratio = rateRatio(own, other, trouble.limits.confidence);
    const [first, ...rest] = others.filter((o) => o.own.count > 0).flatMap((o) => o.lines);
    const evidence: NonEmpty<SourceLine> = first === undefined ? trouble.evidence : [first, ...rest];
    const point: Point = { statement: sayRates(firmware, own, other, ratio), evidence };
    if (own.affected < trouble.limits.otherPairs || ratio === null) return doubted([point]);
    const p = fisherExact({ first: sides(own), second: sides(other) });
    const shared = decibans(evidenceBound(p)) + trouble.limits.fleetDecibans;
    const weight = capped(Math.max(decibans(evidenceBound(ratio.p)), shared), trouble.limits);
    const isWorse = (ratio.ratio ?? Number.POSITIVE_INFINITY) > 1;
    return weight > 0 && isWorse ? { decibans: weight, for: [point], against: [] } : doubted([point]);
  },
};

/** Bouts of losses and failed attempts of a pair, and the hours watched, with the firmware and with another. */
interface PairTrouble {
  readonly own: Counted;
  readonly other: Counted;
  readonly lines: readonly SourceLine[];
}

/** The same of some pairs, and how many there were, each counted where it was longer, and how many of these had any. */
interface Side extends Counted {
  readonly pairs: number;
  readonly affected: number;
}

function sumOf(others: readonly PairTrouble[], key: 'own' | 'other'): Side {
  const there = others.filter(
    (o) => o[key].exposure > 0 && o.own.exposure >= o.other.exposure === (key === 'own'),
  );
  return {
    count: others.reduce((s, o) => s + o[key].count, 0),
    exposure: others.reduce((s, o) => s + o[key].exposure, 0),
    pairs: there.length,
    affected: there.filter((o) => o[key].count > 0).length,
  };
}

function sides({ pairs, affected }: Side): readonly [number, number] {
  return [affected, pairs - affected];
}

function troubleWith(facts: PairFacts, firmware: string, { allAttempts, rules }: Trouble): PairTrouble {
  const { timeline, losses } = facts;
  const hasIt = (time: number): boolean | null => {
    const half = standbyAt(timeline, time);
    const found = half === null ? null : valueAt(track(timeline, half, 'firmware'), time);
    return found === null ? null : found === firmware;
  };
  // A person who exchanges the roles takes the partner away for a moment: that is no trouble.
  const commanded = facts.switchovers.filter((s) => s.commanded === true).map((s) => s.at);
  const isOfCommand = (e: TimelineEvent): boolean =>
    commanded.some(
      (at) => e.earliest <= at.time + rules.belongsMs && at.earliest <= e.time + rules.belongsMs,
    );
  const lost = losses.filter((l) => l.kind === 'counted' && !isOfCommand(l.event)).map((l) => l.event);
  // The end of a ready partner that did not hold, and the wait after a loss, are those losses: they count once.
  const failed = allAttempts.filter(
    (a) => a.pair === timeline.pair && a.outcome !== 'lost' && a.cause !== 'loss' && isFailed(a),
  );
  const times = [...failed.map((a) => Math.max(a.start.time, a.end.time - 1)), ...lost.map((e) => e.time)];
  const bouts = (wanted: boolean): number =>
    boutsIn(
      times.filter((t) => hasIt(t) === wanted),
      rules.boutMs,
    );
  const changes = timeline.events.filter((e) => e.signal === 'firmware' || e.signal === 'role');
  const edges = [...new Set([timeline.from, ...changes.map((e) => e.time), timeline.to])].sort(
    (a, b) => a - b,
  );
  const hours = (wanted: boolean): number =>
    edges.slice(0, -1).reduce((sum, edge, index) => {
      const span = clip(timeline.observed, edge, edges[index + 1] ?? edge);
      return hasIt(edge) === wanted ? sum + total(span) / 3_600_000 : sum;
    }, 0);
  return {
    own: { count: bouts(true), exposure: hours(true) },
    other: { count: bouts(false), exposure: hours(false) },
    lines: lost.slice(-3).flatMap((e) => [...linesOf(e)]),
  };
}

/** How many bouts some times make, each from one to the next within so long. */
function boutsIn(times: readonly number[], boutMs: number): number {
  const sorted = times.toSorted((a, b) => a - b);
  return sorted.filter((time, index) => time - (sorted[index - 1] ?? Number.NEGATIVE_INFINITY) > boutMs)
    .length;
}

function sayRates(firmware: string, own: Side, other: Side, ratio: RateRatio | null): string {
  const counted = ({ count, exposure, affected, pairs }: Side): string =>
    exposure === 0
      ? 'never observed'
      : `${affected} of ${pairs}, ${count} ${count === 1 ? 'bout' : 'bouts'} in ${sayDuration(exposure * 3600)}`;
  const base = `Other pairs that lost their partner or failed to synchronise: with firmware ${firmware} ${counted(own)}; with another ${counted(other)}.`;
  if (ratio === null) return base;
  const high = ratio.high === null ? 'without an upper limit' : `to ${ratio.high.toFixed(1)}`;
  return `${base} The rate is ${ratio.ratio === null ? 'higher by a factor' : `${ratio.ratio.toFixed(1)} times as high, 95 %`} from ${ratio.low.toFixed(1)} ${high}.`;
}
