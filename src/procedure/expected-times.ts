import { aalenJohansen, incidenceQuantile } from '../statistics/aalen-johansen.ts';
import { type Between, turnbull, turnbullQuantile } from '../statistics/turnbull.ts';
import type { PairFacts } from '../timeline/facts.ts';
import type { BringUp, ExpectedTime, Measure } from '../vocabulary.ts';

/** Whose bring-ups tell how long a step takes; `null` leaves a word open. */
export interface Alike {
  readonly model: string | null;
  readonly firmware: string | null;
  readonly cause: BringUp['cause'] | null;
}

/** What is timed from the start of a bring-up: to the ready partner, or to the steady light. */
export type Timed = 'ready' | 'steady';

/** One attempt between bounds, in seconds; `Infinity` where its end was not seen. */
interface Time extends Between {
  readonly end: 'ended' | 'competing' | 'censored';
}

/**
 * How long the bring-ups of one model and firmware took: those not seen to end count as censored, those that other work cut short
 * as a competing end, those between two readings by their bounds. `null` where the model or firmware is not known, or nobody's tell.
 * Sources: as in `src/statistics`: Aalen and Johansen where times are exact, else Turnbull.
 */
export function expectedTime(bringUps: readonly BringUp[], alike: Alike, timed: Timed): ExpectedTime | null {
  const { model, firmware, cause } = alike;
  if (model === null || firmware === null) return null;
  const own = bringUps.filter(
    (b) => b.model === model && b.firmware === firmware && (cause === null || b.cause === cause),
  );
  const times = own.flatMap((b) => timeOf(timed === 'ready' ? b.sync : b.light, b.outcome));
  if (times.length === 0) return null;
  const quantile = quantilesOf(times);
  return { median: quantile(0.5), p95: quantile(0.95), n: times.length };
}

/** All bring-ups of some pairs but one that is being watched: it tells nothing of itself. */
export function bringUpsBut(fleet: readonly PairFacts[], watched: BringUp | null): readonly BringUp[] {
  return fleet.flatMap((facts) => facts.bringUps.filter((b) => b !== watched));
}

function timeOf({ seconds, low, high, censored }: Measure, outcome: BringUp['outcome']): readonly Time[] {
  if (seconds === null) return [];
  const own = low ?? seconds;
  if (!censored) return [{ low: own, high: high ?? seconds, end: 'ended' }];
  return [
    { low: own, high: Number.POSITIVE_INFINITY, end: outcome === 'superseded' ? 'competing' : 'censored' },
  ];
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
