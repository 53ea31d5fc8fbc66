import {
  type Change,
  type Instant,
  type NonEmpty,
  pairHappenings,
  pairSignals,
  type Signal,
  type Source,
  type Subject,
} from '../vocabulary.ts';
import type { Stamp } from './durations.ts';

/** One change as one stream saw it, on its way to become an event. */
export interface Sighting extends Stamp {
  readonly kind: Change['kind'];
  readonly subject: Subject;
  readonly signal: Signal;
  readonly value: string | null;
  /** The first reading of its stream: a state, not a change. */
  readonly initial: boolean;
  /** The value was read before too, but not in between: a state, not a change. */
  readonly resumed: boolean;
  /** Names the stream: two sightings of one stream are never the same change. */
  readonly stream: string;
  /** Median spacing of the stream, in milliseconds. */
  readonly spacing: number;
  /** Until when the stream is known to have read this value; for entries and notes the instant itself. */
  readonly readUntil: number;
  /** The stamps as they were printed, where the clock of the file is known to be off; else `null`. */
  readonly printed: Instant | null;
  /** How far the stamps of its file scatter about those of the reference, in milliseconds. */
  readonly spread: number;
  readonly sources: NonEmpty<Source>;
}

/** What is about the pair, no matter what half tells it. */
export const ofPair: ReadonlySet<Signal> = new Set([...pairSignals, ...pairHappenings]);

/** Order of time; of two that end together the one with the later beginning, the better known, comes first. */
export function byTime(a: Stamp, b: Stamp): number {
  return a.time - b.time || b.earliest - a.earliest;
}

/** A sighting as an object of its own, of which some may be another. Field by field: a copy of all at once takes ten times as long. */
export function sightingWith(sighting: Sighting, other: Partial<Sighting>): Sighting {
  const { kind, time, earliest, resolution, subject, signal, value, initial, resumed } = sighting;
  const { stream, spacing, readUntil, printed, spread, sources } = sighting;
  const own = { kind, time, earliest, resolution, subject, signal, value, initial, resumed };
  return { ...own, stream, spacing, readUntil, printed, spread, sources, ...other };
}
