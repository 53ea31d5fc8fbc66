import type {
  Change,
  ClockOffset,
  ImportedFile,
  Instant,
  NonEmpty,
  Signal,
  Source,
  Subject,
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

/**
 * All sightings of the files, per pair, each list in the order of time. What a file tells whose clock is off by a measured
 * offset is set to where it may have been by the clock of the reference; its printed stamps are kept beside.
 */
export function sightingsByPair(
  files: readonly ImportedFile[],
  offsets: readonly ClockOffset[],
): ReadonlyMap<string, readonly Sighting[]> {
  const byPair = new Map<string, Sighting[]>();
  for (const file of files) {
    const offset = offsets.find((o) => o.file === file.input.file && o.ahead !== null);
    const streams = file.streams.map((_, index) => `${file.input.file}\n${index}`);
    const untils = readUntils(file);
    for (const [index, change] of file.changes.entries()) {
      const sighting = toSighting(file, change, streams[change.stream] ?? '', untils[index] ?? change.time);
      const placed = offset === undefined ? sighting : withOffset(sighting, offset);
      const list = byPair.get(change.subject.pair);
      if (list === undefined) byPair.set(change.subject.pair, [placed]);
      else list.push(placed);
    }
  }
  for (const list of byPair.values()) list.sort(byTime);
  return byPair;
}

/** Order of time; of two that end together the one with the later beginning, the better known, comes first. */
export function byTime(a: Stamp, b: Stamp): number {
  return a.time - b.time || b.earliest - a.earliest;
}

/** For each change the last instant at which its stream is known to have read its value. */
function readUntils({ changes, streams }: ImportedFile): readonly number[] {
  const untils = changes.map((c) => c.time);
  const open = new Map<string, number>();
  for (const [index, change] of changes.entries()) {
    if (change.kind !== 'reading') continue;
    const key = readKey(change.stream, change);
    const before = open.get(key);
    if (before !== undefined) untils[before] = Math.max(changes[before]?.time ?? 0, change.earliest);
    open.set(key, index);
  }
  const ends = new Map(
    streams.flatMap(({ reads }, stream) => reads.map((read) => [readKey(stream, read), read.to] as const)),
  );
  for (const [key, index] of open) {
    const change = changes[index];
    if (change !== undefined)
      untils[index] = ends.get(key) ?? streams[change.stream]?.last.time ?? change.time;
  }
  return untils;
}

function readKey(
  stream: number,
  { subject, signal }: { readonly subject: Subject; readonly signal: Signal },
): string {
  return `${stream}\n${subject.half ?? ''}\n${subject.role ?? ''}\n${signal}`;
}

function toSighting(file: ImportedFile, change: Change, name: string, readUntil: number): Sighting {
  const stream = file.streams[change.stream];
  const isReading = change.kind === 'reading';
  const { time, earliest, line, text, count } = change;
  return {
    kind: change.kind,
    time,
    earliest,
    resolution: change.kind === 'note' ? 0 : file.resolution,
    subject: change.subject,
    signal: change.signal,
    value: change.value,
    initial: isReading && change.before === null && change.earliest === change.time,
    resumed: isReading && change.before !== null && change.before === change.value,
    stream: name,
    spacing: stream?.spacing ?? 0,
    readUntil,
    printed: null,
    spread: 0,
    sources: [{ file: file.input.file, line, text, count, printed: { time, earliest } }],
  };
}

function withOffset(sighting: Sighting, { ahead, within, spread, isBeyond }: ClockOffset): Sighting {
  if (ahead === null || !isBeyond) return { ...sighting, spread };
  const { time, earliest, readUntil } = sighting;
  return {
    ...sighting,
    spread,
    time: time - ahead + within,
    earliest: earliest - ahead - within,
    readUntil: Math.max(time - ahead + within, readUntil - ahead - within),
    printed: { time, earliest },
  };
}
