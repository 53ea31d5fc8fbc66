import { countAt, textAt, topicAt, valueAt } from '../changes.ts';
import type {
  Change,
  Changes,
  ImportedFile,
  Instant,
  NonEmpty,
  Signal,
  Source,
  Subject,
  Topic,
} from '../vocabulary.ts';
import type { ClockOffset } from './clock-offsets.ts';
import type { Stamp } from './durations.ts';
import { readUntils } from './read-untils.ts';

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

/** The changes of one file, and what all its sightings have in common. */
export interface SeenFile {
  readonly file: string;
  readonly resolution: number;
  readonly changes: Changes;
  /** Until when each was read, by its place. */
  readonly untils: Float64Array;
  /** The name and the spacing of each stream. */
  readonly streams: readonly { readonly name: string; readonly spacing: number }[];
  readonly spread: number;
  /** How far its clock is ahead, where that is measured and beyond its spread. */
  readonly offset: { readonly ahead: number; readonly within: number } | null;
}

/** What a file tells of one pair: the places of its changes. */
export interface SeenPart {
  readonly of: SeenFile;
  readonly places: readonly number[];
}

/** What the files tell of each pair, in the order of the files. */
export function partsByPair(
  files: readonly ImportedFile[],
  offsets: readonly ClockOffset[],
): ReadonlyMap<string, readonly SeenPart[]> {
  const byPair = new Map<string, { of: SeenFile; places: number[] }[]>();
  for (const file of files) {
    const of = seenFile(file, offsets);
    const { topics, topic } = file.changes;
    const places = topics.map(({ subject: { pair } }) => {
      const parts = byPair.get(pair) ?? [];
      byPair.set(pair, parts);
      const last = parts.at(-1);
      const part = last?.of === of ? last : { of, places: [] };
      if (part !== last) parts.push(part);
      return part.places;
    });
    for (const [place, of] of topic.entries()) places[of]?.push(place);
  }
  return byPair;
}

function seenFile(file: ImportedFile, offsets: readonly ClockOffset[]): SeenFile {
  const offset = offsets.find((o) => o.file === file.input.file && o.ahead !== null);
  const { streams, changes, resolution, input } = file;
  const isOff = offset !== undefined && offset.ahead !== null && offset.isBeyond;
  return {
    file: input.file,
    resolution,
    changes,
    untils: readUntils(changes, streams),
    streams: streams.map(({ spacing }, index) => ({ name: `${input.file}\n${index}`, spacing })),
    spread: offset?.spread ?? 0,
    offset: isOff ? { ahead: offset.ahead, within: offset.within } : null,
  };
}

/**
 * The sightings of one pair in the order of time. What a file tells whose clock is off by a measured offset is set to where it may
 * have been by the clock of the reference; its printed stamps are kept beside.
 */
export function sightingsOf(parts: readonly SeenPart[]): readonly Sighting[] {
  const sightings: Sighting[] = [];
  for (const { of, places } of parts) for (const place of places) sightings.push(new Seen(of, place));
  return sightings.sort(byTime);
}

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

/**
 * A sighting that is still columns: its place in them, read where it is asked for. A class, since a million of them have their
 * getters only once.
 */
export class Seen implements Sighting {
  readonly of: SeenFile;
  readonly place: number;

  constructor(of: SeenFile, place: number) {
    this.of = of;
    this.place = place;
  }

  get kind(): Change['kind'] {
    return this.topic.kind;
  }

  get time(): number {
    const time = this.of.changes.time[this.place] ?? Number.NaN;
    return this.of.offset === null ? time : latest(time, this.of.offset);
  }

  get earliest(): number {
    const earliest = this.of.changes.earliest[this.place] ?? Number.NaN;
    return this.of.offset === null ? earliest : soonest(earliest, this.of.offset);
  }

  get resolution(): number {
    return this.kind === 'note' ? 0 : this.of.resolution;
  }

  get subject(): Subject {
    return this.topic.subject;
  }

  get signal(): Signal {
    return this.topic.signal;
  }

  get value(): string | null {
    return valueAt(this.of.changes, this.place);
  }

  get initial(): boolean {
    const { changes } = this.of;
    const isPoint = changes.earliest[this.place] === changes.time[this.place];
    return this.kind === 'reading' && changes.before[this.place] === 0 && isPoint;
  }

  get resumed(): boolean {
    const { before, value } = this.of.changes;
    return this.kind === 'reading' && before[this.place] !== 0 && before[this.place] === value[this.place];
  }

  get stream(): string {
    return this.of.streams[this.topic.stream]?.name ?? '';
  }

  get spacing(): number {
    return this.of.streams[this.topic.stream]?.spacing ?? 0;
  }

  get readUntil(): number {
    const until = this.of.untils[this.place] ?? Number.NaN;
    return this.of.offset === null ? until : Math.max(this.time, soonest(until, this.of.offset));
  }

  get printed(): Instant | null {
    return this.of.offset === null ? null : stampAt(this.of, this.place);
  }

  get spread(): number {
    return this.of.spread;
  }

  get sources(): NonEmpty<Source> {
    return [new SeenSource(this.of, this.place)];
  }

  private get topic(): Topic {
    return topicAt(this.of.changes, this.place) ?? noTopic;
  }
}

/** The row of a sighting, which becomes text where that is asked for: most rows never do. */
class SeenSource implements Source {
  readonly of: SeenFile;
  readonly place: number;

  constructor(of: SeenFile, place: number) {
    this.of = of;
    this.place = place;
  }

  get file(): string {
    return this.of.file;
  }

  get line(): number {
    return this.of.changes.line[this.place] ?? 0;
  }

  get text(): string {
    return textAt(this.of.changes, this.place);
  }

  get count(): number {
    return countAt(this.of.changes, this.place);
  }

  get printed(): Instant {
    return stampAt(this.of, this.place);
  }
}

function stampAt({ changes }: SeenFile, place: number): Instant {
  const { time, earliest } = changes;
  return { time: time[place] ?? Number.NaN, earliest: earliest[place] ?? Number.NaN };
}

/** Of a place that no column has. */
const noTopic: Topic = {
  kind: 'note',
  subject: { pair: '', half: null, role: null },
  signal: 'note',
  stream: -1,
};

function latest(time: number, { ahead, within }: NonNullable<SeenFile['offset']>): number {
  return time - ahead + within;
}

function soonest(time: number, { ahead, within }: NonNullable<SeenFile['offset']>): number {
  return time - ahead - within;
}
