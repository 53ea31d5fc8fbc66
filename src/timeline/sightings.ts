import type { Change, ImportedFile, NonEmpty, Signal, Source, Subject } from '../vocabulary.ts';
import type { Stamp } from './durations.ts';

/** One change as one stream saw it, on its way to become an event. */
export interface Sighting extends Stamp {
  readonly kind: Change['kind'];
  readonly subject: Subject;
  readonly signal: Signal;
  readonly value: string | null;
  /** The first reading of its stream: a state, not a change. */
  readonly initial: boolean;
  /** Names the stream: two sightings of one stream are never the same change. */
  readonly stream: string;
  /** Median spacing of the stream, in milliseconds. */
  readonly spacing: number;
  /** Last reading of the stream, in milliseconds UTC. */
  readonly streamEnd: number;
  readonly sources: NonEmpty<Source>;
}

/** All sightings of the files, per pair, each list in the order of time. */
export function sightingsByPair(files: readonly ImportedFile[]): ReadonlyMap<string, readonly Sighting[]> {
  const byPair = new Map<string, Sighting[]>();
  for (const file of files) {
    const streams = file.streams.map((_, index) => `${file.input.file}\n${index}`);
    for (const change of file.changes) {
      const list = byPair.get(change.subject.pair);
      const sighting = toSighting(file, change, streams[change.stream] ?? '');
      if (list === undefined) byPair.set(change.subject.pair, [sighting]);
      else list.push(sighting);
    }
  }
  for (const list of byPair.values()) list.sort(byTime);
  return byPair;
}

/** Order of time; of two that end together the one with the later beginning, the better known, comes first. */
export function byTime(a: Stamp, b: Stamp): number {
  return a.time - b.time || b.earliest - a.earliest;
}

function toSighting(file: ImportedFile, change: Change, name: string): Sighting {
  const stream = file.streams[change.stream];
  return {
    kind: change.kind,
    time: change.time,
    earliest: change.earliest,
    resolution: change.kind === 'note' ? 0 : file.resolution,
    subject: change.subject,
    signal: change.signal,
    value: change.value,
    initial: change.kind === 'reading' && change.before === null && change.earliest === change.time,
    stream: name,
    spacing: stream?.spacing ?? 0,
    streamEnd: stream?.last.time ?? change.time,
    sources: [{ file: file.input.file, line: change.line, text: change.text, count: change.count }],
  };
}
