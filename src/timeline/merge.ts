import type { NonEmpty, Source } from '../vocabulary.ts';
import type { Stamp } from './durations.ts';
import type { TimelineRules } from './rules.ts';
import { byTime, type Sighting } from './sightings.ts';

/** What several streams saw of one change, or of one happening. */
export interface Merged extends Stamp {
  readonly kind: Sighting['kind'];
  readonly value: string | null;
  readonly initial: boolean;
  readonly streams: ReadonlySet<string>;
  readonly sources: NonEmpty<Source>;
  /** Until when a stream is known to have read this value, if nothing changed it before. */
  readonly readUntil: number;
}

/**
 * Joins the sightings of one pair, half and signal that tell of one change: same value, different streams, bounds that
 * overlap, or both exact and within the tolerance. Bounds become the intersection, or the finer source's point. Gives
 * them in the order of time; first readings stay by themselves. Source: design.md, section 2, Merging.
 */
export function mergeSightings(sightings: readonly Sighting[], rules: TimelineRules): readonly Merged[] {
  const merged: Merged[] = [];
  const alone = lonely();
  const isOne = sightings.every((s) => s.stream === sightings[0]?.stream);
  const longest = sightings.reduce((most, s) => Math.max(most, s.time - s.earliest), 0);
  for (const sighting of [...sightings].sort(byTime)) {
    // One stream never tells of one change twice.
    const partner = sighting.initial || isOne ? -1 : findPartner(merged, sighting, longest, rules);
    const found = merged[partner];
    if (found === undefined) merged.push(alone(sighting));
    else merged[partner] = join(found, sighting);
  }
  return merged.sort(byTime);
}

/** Makes changes that one stream alone saw; those of one stream share the set that names it. */
function lonely(): (sighting: Sighting) => Merged {
  const sets = new Map<string, ReadonlySet<string>>();
  return ({ kind, time, earliest, resolution, value, initial, stream, streamEnd, sources }) => {
    const streams = sets.get(stream) ?? new Set([stream]);
    sets.set(stream, streams);
    const readUntil = kind === 'reading' ? streamEnd : time;
    return { kind, time, earliest, resolution, value, initial, streams, sources, readUntil };
  };
}

function findPartner(
  merged: readonly Merged[],
  sighting: Sighting,
  longest: number,
  rules: TimelineRules,
): number {
  const horizon = sighting.earliest - longest - rules.mergeMs;
  for (let index = merged.length - 1; index >= 0; index -= 1) {
    const other = merged[index];
    if (other === undefined || other.time < horizon) return -1;
    const same = other.value === sighting.value && !other.initial && !other.streams.has(sighting.stream);
    if (same && tellOfOneChange(other, sighting, rules)) return index;
  }
  return -1;
}

function tellOfOneChange(a: Stamp, b: Stamp, rules: TimelineRules): boolean {
  if (isPoint(a) && isPoint(b)) return Math.abs(a.time - b.time) <= rules.mergeMs;
  // Bounds are open on the left; a stamp without decimals may stand for any instant of its second.
  const slack = Math.max(a.resolution, b.resolution);
  return a.time + slack > b.earliest && b.time + slack > a.earliest;
}

function isPoint(stamp: Stamp): boolean {
  return stamp.time === stamp.earliest;
}

function join(a: Merged, b: Sighting): Merged {
  const kind = rank(a.kind) <= rank(b.kind) ? a.kind : b.kind;
  const readUntil = Math.max(a.readUntil, b.kind === 'reading' ? b.streamEnd : b.time);
  const sources: NonEmpty<Source> = [...a.sources, ...b.sources];
  const streams = new Set([...a.streams, b.stream]);
  return { ...narrower(a, b), kind, value: a.value, initial: false, streams, sources, readUntil };
}

/** An entry is known better than a reading, and a reading better than a field note. */
function rank(kind: Sighting['kind']): number {
  return kind === 'entry' ? 0 : kind === 'reading' ? 1 : 2;
}

function narrower(a: Stamp, b: Stamp): Stamp {
  if (isPoint(a) && isPoint(b)) return pick(finer(a, b));
  if (isPoint(a)) return pick(a);
  if (isPoint(b)) return pick(b);
  const earliest = Math.max(a.earliest, b.earliest);
  const time = Math.min(a.time, b.time);
  if (earliest > time) return pick(a.time - a.earliest <= b.time - b.earliest ? a : b);
  return { earliest, time, resolution: Math.max(a.resolution, b.resolution) };
}

function finer(a: Stamp, b: Stamp): Stamp {
  if (a.resolution !== b.resolution) return a.resolution < b.resolution ? a : b;
  return a.time <= b.time ? a : b;
}

function pick({ time, earliest, resolution }: Stamp): Stamp {
  return { time, earliest, resolution };
}
