import { decibans, evidenceBound } from '../statistics/evidence-bound.ts';
import { type Counted, type RateRatio, rateRatio } from '../statistics/rate-ratio.ts';
import { isFailed } from '../timeline/attempts.ts';
import { clip, total } from '../timeline/coverage.ts';
import { linesOf } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { standbyAt } from '../timeline/standby.ts';
import { track, valueAt } from '../timeline/tracks.ts';
import { type NonEmpty, type Point, type SourceLine, sayDuration } from '../vocabulary.ts';
import { type Cause, capped, doubted, type Trouble } from './cause.ts';

export const firmwareWide: Cause = {
  meta: {
    id: 'firmware-wide',
    title: 'Other pairs with this firmware have the same trouble',
    kind: 'pattern',
    explains: 'A fault of the firmware itself, that no work on this pair will cure.',
    shows:
      'Other pairs with the firmware lose their partner or fail to synchronise more often than those with another.',
    needs: [['firmware']],
    next: 'Do not exchange modules for it: report firmware, pairs and times to the maker, and hold back further reflashes to it until they have answered.',
  },
  weigh(trouble) {
    const { facts, half, to } = trouble;
    const firmware = half === null ? null : valueAt(track(facts.timeline, half, 'firmware'), to);
    if (firmware === null) return doubted([]);
    const others = trouble.fleet.filter((f) => f !== facts).map((f) => troubleWith(f, firmware, trouble));
    if (others.length === 0)
      return doubted([{ statement: 'The files speak of no other pair.', evidence: trouble.evidence }]);
    const sum = (key: 'own' | 'other'): Counted => ({
      count: others.reduce((s, o) => s + o[key].count, 0),
      exposure: others.reduce((s, o) => s + o[key].exposure, 0),
    });
    const affected = others.filter((o) => o.own.count > 0);
    const [first, ...rest] = affected.flatMap((o) => o.lines);
    const evidence: NonEmpty<SourceLine> = first === undefined ? trouble.evidence : [first, ...rest];
    const own = sum('own');
    const other = sum('other');
    const ratio = rateRatio(own, other, trouble.limits.confidence);
    const point: Point = { statement: sayRates(firmware, own, other, affected.length, ratio), evidence };
    if (affected.length < trouble.limits.otherPairs || ratio === null) return doubted([point]);
    const weight = capped(decibans(evidenceBound(ratio.p)), trouble.limits);
    return weight > 0 ? { decibans: weight, for: [point], against: [] } : doubted([point]);
  },
};

interface PairTrouble {
  readonly own: Counted;
  readonly other: Counted;
  readonly lines: readonly SourceLine[];
}

/** Losses and failed attempts of a pair, and the hours watched, while its standby had the firmware and while another. */
function troubleWith(facts: PairFacts, firmware: string, { allAttempts }: Trouble): PairTrouble {
  const { timeline, losses } = facts;
  const hasIt = (time: number): boolean | null => {
    const half = standbyAt(timeline, time);
    const found = half === null ? null : valueAt(track(timeline, half, 'firmware'), time);
    return found === null ? null : found === firmware;
  };
  const lost = losses.filter((l) => l.kind === 'counted').map((l) => l.event);
  // The end of a ready partner that did not hold, and the wait after a loss, are those losses: they count once.
  const failed = allAttempts.filter(
    (a) => a.pair === timeline.pair && a.outcome !== 'lost' && a.cause !== 'loss' && isFailed(a),
  );
  const times = [...failed.map((a) => Math.max(a.start.time, a.end.time - 1)), ...lost.map((e) => e.time)];
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
    own: { count: times.filter((t) => hasIt(t) === true).length, exposure: hours(true) },
    other: { count: times.filter((t) => hasIt(t) === false).length, exposure: hours(false) },
    lines: lost.slice(-3).flatMap((e) => [...linesOf(e)]),
  };
}

function sayRates(
  firmware: string,
  own: Counted,
  other: Counted,
  affected: number,
  ratio: RateRatio | null,
): string {
  const counted = ({ count, exposure }: Counted): string =>
    exposure === 0 ? 'never observed' : `${count} in ${sayDuration(exposure * 3600)}`;
  const base = `Losses and failed attempts of other pairs: with firmware ${firmware} ${counted(own)}, on ${affected} ${affected === 1 ? 'pair' : 'pairs'}; with another ${counted(other)}.`;
  if (ratio === null) return base;
  const high = ratio.high === null ? 'without an upper limit' : `to ${ratio.high.toFixed(1)}`;
  return `${base} The rate is ${ratio.ratio === null ? 'higher by a factor' : `${ratio.ratio.toFixed(1)} times as high, 95 %`} from ${ratio.low.toFixed(1)} ${high}.`;
}
