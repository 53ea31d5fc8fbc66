import type { Instant, Measure, Swap, TimelineEvent } from '../../../src/vocabulary.ts';
import type { Verified } from '../verify-files.ts';
import type { View } from './relation.ts';

/** What an answer says of one pair, by a name for each thing: `swap 1 check soaked` is `pass`. */
export type Reduced = ReadonlyMap<string, string>;

export const asItIs: View = { time: (time) => time, half: (half) => half };

/**
 * An answer reduced to what may not change: the events of the pair with their bounds, its findings, and of every swap its
 * verdict, checks, steps and durations. Left out: file names, line numbers, the text of lines and SHA-256, and with them
 * all evidence, since these are of the files and not of the pair; counts of rows and what the files cover, since a file
 * given twice has twice the rows; the sentences, since they say these figures again, with counts of rows among them;
 * findings about files; the words of a note, which name halves; every other pair.
 */
export function reduce({ analysed, swaps }: Verified, pair: string, view: View): Reduced {
  const events = analysed.timelines.filter((t) => t.pair === pair).flatMap((t) => t.events);
  const findings = analysed.findings.filter((f) => f.pair === pair);
  return new Map([
    ...swaps.filter((s) => s.pair === pair).flatMap((swap, index) => swapEntries(swap, index, view)),
    ...findings.map(({ id, half, from, to, severity }): [string, string] => [
      `finding ${id} ${half === null ? '' : view.half(half)} ${at(from, view)} ${at(to, view)}`,
      severity,
    ]),
    ...eventEntries(events, view),
  ]);
}

function swapEntries(swap: Swap, index: number, view: View): readonly [string, string][] {
  const name = (what: string): string => `swap ${index + 1} ${what}`;
  const { from, to, verdict, halves, bringUps, switchovers, exposure, checks } = swap;
  return [
    [name('verdict'), verdict],
    ...checks.map((c): [string, string] => [name(`check ${c.id}`), c.status]),
    [name('span'), `${at(from, view)} to ${at(to, view)}`],
    ...halves.map(({ half, removedAt, insertedAt, ...identity }): [string, string] => [
      name(`half ${view.half(half)}`),
      `out ${when(removedAt, view)}, in ${insertedAt === null ? 'not yet' : when(insertedAt, view)}, ${JSON.stringify(identity)}`,
    ]),
    ...bringUps.map(({ half, cause, start, outcome, sync, settledSeconds, light }): [string, string] => [
      name(`bring-up ${view.half(half)} ${when(start, view)}`),
      `${cause} ${outcome}, sync ${measure(sync)}, settled ${settledSeconds}, light ${measure(light)}`,
    ]),
    ...switchovers.map((s): [string, string] => [
      name(`switchover ${when(s.at, view)}`),
      `${view.half(s.fromHalf ?? '')} to ${view.half(s.toHalf ?? '')}, commanded ${s.commanded}, ready ${s.partnerReady} ${s.readySeconds}, firmware ${s.firmwareMatched}, gap ${s.gapSeconds.low} to ${s.gapSeconds.high}`,
    ]),
    [name('exposure'), `${exposure.low} ${exposure.seconds} ${exposure.high}`],
  ];
}

function eventEntries(events: readonly TimelineEvent[], view: View): readonly [string, string][] {
  const counts = new Map<string, number>();
  return events.map((event) => {
    const name = `event ${event.half === null ? 'pair' : view.half(event.half)} ${event.signal}`;
    const number = (counts.get(name) ?? 0) + 1;
    counts.set(name, number);
    const first = event.initial ? ', first reading' : '';
    const value = event.signal === 'note' ? '' : event.value;
    return [`${name} ${number}`, `${value} (before: ${event.before}) ${when(event, view)}${first}`];
  });
}

function at(time: number | null, view: View): string {
  return time === null || !Number.isFinite(time)
    ? String(time)
    : new Date(view.time(time)).toISOString().slice(11, 23);
}

function when({ time, earliest }: Instant, view: View): string {
  return time === earliest ? at(time, view) : `${at(earliest, view)}..${at(time, view)}`;
}

function measure({ low, high, censored, outcome }: Measure): string {
  return `${low} to ${high}${censored ? ' or more' : ''} ${outcome ?? ''}`;
}
