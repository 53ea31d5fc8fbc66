import type { Instant, NonEmpty, Source } from '../vocabulary.ts';
import type { Stamp } from './durations.ts';
import { asPrinted } from './printed-bounds.ts';
import type { TimelineRules } from './rules.ts';
import { byTime, type Sighting, sightingWith } from './sightings.ts';
import { countUntil } from './tracks.ts';

/** What several streams saw of one change, or of one happening; or one reading of a state that was no change. */
export interface Merged extends Stamp {
  readonly kind: Sighting['kind'];
  readonly value: string | null;
  /** First readings of their streams alone. */
  readonly initial: boolean;
  /** The value was read before too, but not in between. */
  readonly resumed: boolean;
  readonly streams: ReadonlySet<string>;
  readonly sources: NonEmpty<Source>;
  /** Until when a stream is known to have read this value, if nothing changed it before. */
  readonly readUntil: number;
  /** As it was printed, where no source with a clock that is right tells it; else `null`. */
  readonly printed: Instant | null;
  readonly spread: number;
}

/**
 * Joins the sightings of one pair, half and signal that tell of one change: same value, different streams, bounds that
 * overlap, or both exact and within the tolerance. Bounds become the intersection, or the finer source's point; a first
 * reading may end them sooner and never widens them. Gives them in the order of time. Source: design.md, section 2, Merging.
 */
export function mergeSightings(sightings: readonly Sighting[], rules: TimelineRules): readonly Merged[] {
  const merged: Merged[] = [];
  const alone = lonely();
  const sorted = [...sightings].sort(byTime);
  const isOne = sorted.every((s) => s.stream === sorted[0]?.stream);
  const longest = sorted.reduce((most, s) => Math.max(most, s.time - s.earliest), 0);
  for (const sighting of sorted.filter((s) => !isState(s))) {
    // One stream never tells of one change twice.
    const partner = isOne ? -1 : findPartner(merged, sighting, longest, rules);
    const found = merged[partner];
    if (found === undefined) merged.push(alone(sighting));
    else merged[partner] = join(found, sighting);
  }
  const states = sorted.filter(isState);
  const { changes, rest } = isOne
    ? { changes: merged, rest: states }
    : withStates(merged.sort(byTime), states, rules);
  // Of a first reading and a first entry at one instant the reading says that it was so before.
  const ordered = changes.toSorted(byTime);
  const standing = rest.map((state) =>
    isKnown(state, ordered, rules) ? sightingWith(state, { printed: null }) : state,
  );
  return asPrinted([...standing.map(alone), ...changes].sort(byTime));
}

/** True for a reading of what others had told last by then: of a clock that is off too it tells nothing that it alone knows. */
function isKnown(state: Sighting, changes: readonly Merged[], rules: TimelineRules): boolean {
  const reach = Math.max(rules.mergeMs, state.spread);
  return changes[countUntil(changes, state.time + reach, 'including') - 1]?.value === state.value;
}

/** A reading of a state that says nothing of when it began. */
export function isState({ initial, resumed }: Pick<Sighting, 'initial' | 'resumed'>): boolean {
  return initial || resumed;
}

/** Makes changes that one stream alone saw; those of one stream share the set that names it. */
function lonely(): (sighting: Sighting) => Merged {
  const sets = new Map<string, ReadonlySet<string>>();
  return (sighting) => {
    const { kind, time, earliest, resolution, value, initial, resumed } = sighting;
    const { stream, readUntil, sources, printed, spread } = sighting;
    const streams = sets.get(stream) ?? new Set([stream]);
    sets.set(stream, streams);
    return {
      kind,
      time,
      earliest,
      resolution,
      value,
      initial,
      resumed,
      streams,
      sources,
      readUntil,
      printed,
      spread,
    };
  };
}

function findPartner(
  merged: readonly Merged[],
  sighting: Sighting,
  longest: number,
  rules: TimelineRules,
): number {
  const horizon = sighting.earliest - longest - rules.mergeMs - sighting.spread;
  let isOtherwise = false;
  for (let index = merged.length - 1; index >= 0; index -= 1) {
    const other = merged[index];
    if (other === undefined || other.time < horizon) return -1;
    if (other.value !== sighting.value) isOtherwise = true;
    else if (other.streams.has(sighting.stream)) continue;
    else if (tellOfOneChange(other, sighting, isOtherwise, rules)) return index;
  }
  return -1;
}

/** `isOtherwise`: the state was told to be another in between. */
function tellOfOneChange(a: Told, b: Told, isOtherwise: boolean, rules: TimelineRules): boolean {
  const spread = Math.max(a.spread, b.spread);
  if (isPoint(a) && isPoint(b)) return Math.abs(a.time - b.time) <= Math.max(rules.mergeMs, spread);
  // What one file logged and another polled is one change too if it lies no further outside the readings than their clocks scatter.
  const isLogged = isPoint(a) || isPoint(b);
  // Bounds are open on the left; a stamp without decimals may stand for any instant of its second.
  const slack = Math.max(a.resolution, b.resolution, isLogged && !isOtherwise ? spread : 0);
  return a.time + slack > b.earliest && b.time + slack > a.earliest;
}

type Told = Stamp & Pick<Merged, 'spread'>;

function isPoint(stamp: Stamp): boolean {
  return stamp.time === stamp.earliest;
}

function join(a: Merged, b: Sighting): Merged {
  return {
    ...narrower(a, b),
    kind: rank(a.kind) <= rank(b.kind) ? a.kind : b.kind,
    value: a.value,
    initial: false,
    resumed: false,
    readUntil: Math.max(a.readUntil, b.readUntil),
    streams: new Set([...a.streams, b.stream]),
    sources: [...a.sources, ...b.sources],
    printed: b.printed === null ? null : a.printed,
    spread: Math.max(a.spread, b.spread),
  };
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

/**
 * The changes, in the order of time, with the readings of their state that lie within their bounds: such a reading was made
 * after the change, ends its bounds there and is evidence of it. `rest` are the readings that lie within none.
 */
function withStates(
  changes: readonly Merged[],
  states: readonly Sighting[],
  rules: TimelineRules,
): { readonly changes: readonly Merged[]; readonly rest: readonly Sighting[] } {
  const narrowed = [...changes];
  const longest = changes.reduce((most, m) => Math.max(most, m.time - m.earliest), 0);
  const rest = states.filter((state) => {
    const reach = Math.max(rules.mergeMs, state.spread);
    for (let place = countUntil(changes, state.time - reach, 'before'); ; place += 1) {
      const change = changes[place];
      if (change === undefined || change.time - longest > state.time + reach) return true;
      // Before the first word of all a reading says that it was so already.
      if (place === 0 && state.time <= change.time && isPoint(change)) continue;
      if (change.streams.has(state.stream) || !isReadAfter(state, change, reach)) continue;
      narrowed[place] = withReading(narrowed[place] ?? change, state);
      return false;
    }
  });
  return { changes: narrowed, rest };
}

function isReadAfter(state: Sighting, change: Merged, reach: number): boolean {
  if (change.value !== state.value) return false;
  return isPoint(change)
    ? Math.abs(change.time - state.time) <= reach
    : change.earliest < state.time && state.time <= change.time;
}

function withReading(change: Merged, state: Sighting): Merged {
  return {
    ...change,
    time: isPoint(change) ? change.time : Math.min(change.time, state.time),
    readUntil: Math.max(change.readUntil, state.readUntil),
    streams: new Set([...change.streams, state.stream]),
    sources: [...change.sources, ...state.sources],
  };
}
