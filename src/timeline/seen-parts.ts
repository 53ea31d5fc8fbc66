import type { ClockOffset, ImportedFile } from '../vocabulary.ts';
import { readUntils } from './read-untils.ts';
import { Seen, type SeenFile } from './seen.ts';
import { byTime, ofPair, type Sighting } from './sightings.ts';

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
    isOfPair: changes.topics.map(({ signal }) => ofPair.has(signal)),
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
