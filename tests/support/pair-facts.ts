import type { Stamp } from '../../src/timeline/durations.ts';
import type { PairFacts } from '../../src/timeline/facts.ts';
import type { Instant, TimelineEvent } from '../../src/vocabulary.ts';
import { analyseTexts, journalText } from './read-text.ts';

/** Lines of a journal in the short form, or files by their names. */
export type Told = readonly string[] | Readonly<Record<string, string>>;

/** The facts of the first pair that is told of. */
export async function factsOfPair(told: Told): Promise<PairFacts> {
  const files = isLines(told) ? { 'ro1.log': journalText(told.join('\n')) } : told;
  const [facts] = (await analyseTexts(files)).facts;
  if (facts === undefined) throw new Error('The files speak of no pair.');
  return facts;
}

function isLines(told: Told): told is readonly string[] {
  return Array.isArray(told);
}

/** A clock of 14 March 2026, with decimals where it has any. */
export function clockOf(time: number): string {
  return new Date(time).toISOString().slice(11, 23).replace('.000', '');
}

/** A clock, or both bounds. */
export function whenOf({ time, earliest }: Instant): string {
  return earliest === time ? clockOf(time) : `${clockOf(earliest)}..${clockOf(time)}`;
}

/** An event in one line. */
export function eventLine(event: TimelineEvent): string {
  const { half, signal, value, before } = event;
  return `${whenOf(event)} ${half ?? 'pair'} ${signal} ${value ?? '-'} was ${before ?? '-'}`;
}

/** Seconds with their bounds, `120` or `110-130`. */
export function secondsOf({
  low,
  high,
}: {
  readonly low: number | null;
  readonly high: number | null;
}): string {
  return low === high ? `${low}` : `${low}-${high ?? ''}`;
}

/** An instant of 14 March 2026 with a resolution in milliseconds; bounds where `earliest` is given. */
export function stamp(clock: string, earliest = clock, resolution = 0): Stamp {
  const at = (text: string): number => Date.parse(`2026-03-14T${text}Z`);
  return { time: at(clock), earliest: at(earliest), resolution };
}

/** The one switchover of a story. Throws if there is not just one. */
export async function onlySwitchover(story: Told): Promise<PairFacts['switchovers'][number]> {
  const { switchovers } = await factsOfPair(story);
  const [switchover] = switchovers;
  if (switchover === undefined || switchovers.length > 1)
    throw new Error('There is not just one switchover.');
  return switchover;
}
