import { countAt, textAt, topicAt, valueAt } from '../changes.ts';
import type { Change, Changes, Instant, NonEmpty, Signal, Source, Subject, Topic } from '../vocabulary.ts';
import type { Sighting } from './sightings.ts';

/** The changes of one file, and what all its sightings have in common. */
export interface SeenFile {
  readonly file: string;
  readonly resolution: number;
  readonly changes: Changes;
  /** Until when each was read, by its place. */
  readonly untils: Float64Array;
  /** Whether each topic is about the pair, no matter what half tells it. */
  readonly isOfPair: readonly boolean[];
  /** The name and the spacing of each stream. */
  readonly streams: readonly { readonly name: string; readonly spacing: number }[];
  readonly spread: number;
  /** How far its clock is ahead, where that is measured and beyond its spread. */
  readonly offset: { readonly ahead: number; readonly within: number } | null;
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

  /** The half that it names; `null` where it is about the pair, or names none. */
  get half(): string | null {
    const { changes, isOfPair } = this.of;
    return isOfPair[changes.topic[this.place] ?? -1] === true ? null : this.subject.half;
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
