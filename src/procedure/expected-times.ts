import { aalenJohansen, incidenceQuantile } from '../statistics/aalen-johansen.ts';
import { type Between, turnbull, turnbullQuantile } from '../statistics/turnbull.ts';
import { between } from '../timeline/durations.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { countUntil, track } from '../timeline/tracks.ts';
import type { BringUp, ExpectedTime, Measure, PairTimeline } from '../vocabulary.ts';

/** Whose bring-ups tell how long a step takes; a model or firmware that is not known tells nothing. */
export interface Alike {
  readonly model: string | null;
  readonly firmware: string | null;
  readonly cause: BringUp['cause'];
}

/** What is timed: a reflash, or from the start of a bring-up to the ready partner or to the steady light. */
export type Timed = 'reflash' | 'ready' | 'steady';

/** One attempt between bounds, in seconds; `Infinity` where its end was not seen. */
interface Time extends Between {
  readonly end: 'ended' | 'competing' | 'censored';
}

/**
 * How long a step took in the bring-ups of one model, firmware and cause: those not seen to end count as censored, those that other
 * work cut short as a competing end, those between two readings by their bounds. `watched` is one that still goes on: it tells nothing
 * of itself. `null` where nobody's tell. Sources: as in `src/statistics`: Aalen and Johansen where times are exact, else Turnbull.
 */
export function expectedTime(
  fleet: readonly PairFacts[],
  { model, firmware, cause }: Alike,
  timed: Timed,
  watched: BringUp | null,
): ExpectedTime | null {
  if (model === null || firmware === null) return null;
  const times = fleet.flatMap(({ bringUps, timeline }) =>
    bringUps
      .filter((b) => b !== watched && b.model === model && b.firmware === firmware && b.cause === cause)
      .flatMap((b) => timeOf(b, timed, timeline)),
  );
  if (times.length === 0) return null;
  const quantile = quantilesOf(times);
  return { median: quantile(0.5), p95: quantile(0.95), n: times.length };
}

function timeOf(bringUp: BringUp, timed: Timed, timeline: PairTimeline): readonly Time[] {
  if (timed === 'reflash') return reflashTime(bringUp, timeline);
  return measuredTime(timed === 'ready' ? bringUp.sync : bringUp.light, bringUp.outcome);
}

/** From the logged start of a reflash to its logged end, where both are. */
function reflashTime({ half, cause, start }: BringUp, timeline: PairTimeline): readonly Time[] {
  if (cause !== 'reflash') return [];
  const begins = track(timeline, half, 'reflash-start');
  const ends = track(timeline, half, 'reflash-end');
  const place = countUntil(ends, start.time);
  const end = ends[place - 1];
  const begun = begins[countUntil(begins, start.time) - 1];
  if (begun === undefined || end?.time !== start.time) return [];
  // Another end in between is the one that this start belongs to.
  if ((ends[place - 2]?.time ?? Number.NEGATIVE_INFINITY) >= begun.time) return [];
  const { low, high } = between(begun, end);
  return [{ low, high, end: 'ended' }];
}

function measuredTime(
  { seconds, low, high, censored }: Measure,
  outcome: BringUp['outcome'],
): readonly Time[] {
  if (seconds === null) return [];
  const own = low ?? seconds;
  if (!censored) return [{ low: own, high: high ?? seconds, end: 'ended' }];
  const end = outcome === 'superseded' ? 'competing' : 'censored';
  return [{ low: own, high: Number.POSITIVE_INFINITY, end }];
}

/** The time by which a share had ended; `null` where so many never did. */
function quantilesOf(times: readonly Time[]): (share: number) => number | null {
  if (times.every((t) => t.low === t.high || t.end !== 'ended')) {
    const steps = aalenJohansen(times.map(({ low, end }) => ({ seconds: low, end })));
    return (share) => incidenceQuantile(steps, share).value;
  }
  const competing = times.filter((t) => t.end === 'competing').map((t) => t.low);
  const { places } = turnbull(
    times.filter((t) => t.end !== 'competing'),
    competing,
  );
  return (share) => turnbullQuantile(places, share).high;
}
