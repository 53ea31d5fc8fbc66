import type { Random } from '../../samples/random.ts';
import { groupBy, keyOf } from '../../src/timeline/groups.ts';
import type { PairTimeline, Signal, Source, TimelineEvent } from '../../src/vocabulary.ts';

export const secondMs = 1000;
export const hourMs = 3_600_000;
const yearMs = 365.25 * 86_400_000;
/** When every made log begins. */
export const madeFrom = Date.UTC(2020, 0, 1);

/** A change that a made log tells of half B, or of the pair where `half` is null. */
export interface MadeChange {
  readonly time: number;
  readonly half: string | null;
  readonly signal: Signal;
  readonly value: string | null;
}

/** A loss of the ready partner, and its return; milliseconds. */
export interface MadeLoss {
  readonly time: number;
  readonly back: number;
}

/** A journal of one pair, exact to the millisecond and without a gap, from `madeFrom` on: ready but for its losses. */
export function madeTimeline(
  pair: string,
  years: number,
  losses: readonly MadeLoss[],
  changes: readonly MadeChange[] = [],
  zone: string | null = null,
): PairTimeline {
  const to = Math.floor(madeFrom + years * yearMs);
  const ready = (time: number, value: string): MadeChange => ({
    time,
    half: null,
    signal: 'partner-ready',
    value,
  });
  const own = inTurn(losses, to);
  const told = [
    ...own.flatMap(({ time, back }) => [ready(time, 'no'), ready(back, 'yes')]),
    ...changes.filter(({ time }) => time > madeFrom && time < to),
  ].sort((a, b) => a.time - b.time);
  const sources = [madeSource(pair)] as const;
  // Named one by one: spreading the change takes most of the time of a study.
  const eventOf = ({ time: exact, half, signal, value }: MadeChange, initial: boolean): TimelineEvent => ({
    time: Math.floor(exact),
    earliest: Math.floor(exact),
    pair,
    half,
    signal,
    value,
    before: null,
    kind: 'entry',
    resolution: 0,
    initial,
    concluded: false,
    sources,
  });
  const events = [eventOf(ready(madeFrom, 'yes'), true), ...told.map((change) => eventOf(change, false))];
  return {
    pair,
    site: null,
    zone,
    halves: ['A', 'B'],
    events,
    tracks: groupBy(events, (e) => keyOf(e.half, e.signal)),
    gauges: [],
    contradicted: [],
    ...observedOf(pair, to),
  };
}

/** All of the time, by one journal. */
function observedOf(
  pair: string,
  to: number,
): Pick<PairTimeline, 'coverage' | 'observation' | 'observed' | 'unobserved' | 'from' | 'to' | 'newest'> {
  const span = { from: madeFrom, to };
  const observation = { observed: [span], unobserved: [] };
  const point = { time: madeFrom, line: 1, text: '' };
  const stream = {
    kind: 'entry',
    unit: pair,
    subject: { pair, half: null, role: null },
    signals: ['partner-ready'],
    first: point,
    last: { ...point, time: to },
    spacing: 0,
    gaps: [],
    reads: [],
    notUnderstood: [],
  } as const;
  const file = `${pair}.log`;
  return {
    coverage: [{ file, log: file, span, stream }],
    observation: new Map([[keyOf(null, 'partner-ready'), { ...observation, seenUntil: to }]]),
    ...observation,
    ...span,
    newest: { time: to, file },
  };
}

/** Losses one after another: what begins before the one before is over is no loss of its own. */
function inTurn(losses: readonly MadeLoss[], to: number): readonly MadeLoss[] {
  const kept: MadeLoss[] = [];
  let free = madeFrom;
  for (const loss of [...losses].sort((a, b) => a.time - b.time)) {
    if (loss.time <= free || loss.back >= to) continue;
    kept.push(loss);
    free = loss.back;
  }
  return kept;
}

/** A count with the mean, by its definition: arrivals of a process of rate 1 within `mean`. */
export function poissonCount(random: Random, mean: number): number {
  let count = -1;
  for (let sum = 0; sum <= mean; sum += exponential(random, 1)) count += 1;
  return count;
}

/** The instants of a Poisson process of some events a year over some years. */
export function poissonTimes(random: Random, ratePerYear: number, years: number): readonly number[] {
  const count = poissonCount(random, ratePerYear * years);
  return Array.from({ length: count }, () => madeFrom + random() * years * yearMs).sort((a, b) => a - b);
}

/** A wait with an exponential distribution; the unit of `mean`. */
export function exponential(random: Random, mean: number): number {
  return -mean * Math.log(1 - random());
}

/** A loss at an instant, over after ten seconds to about two minutes. */
export function lossAt(random: Random, time: number): MadeLoss {
  return { time, back: time + 10 * secondMs + exponential(random, 60 * secondMs) };
}

function madeSource(pair: string): Source {
  return {
    file: `${pair}.log`,
    line: 1,
    text: '',
    count: 1,
    printed: { time: madeFrom, earliest: madeFrom },
  };
}
