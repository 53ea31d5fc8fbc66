import type { Coverage, ImportedFile, NonEmpty } from '../vocabulary.ts';
import { continuedLogs } from './continued-logs.ts';
import type { LogComparison } from './one-log.ts';
import type { Sighting } from './sightings.ts';

/** What a stream of a pair covers, under the name that its sightings have. */
export interface NamedCoverage extends Coverage {
  readonly name: string;
}

/** The same before it is known which journals go on with each other. */
export type NamedStream = Omit<NamedCoverage, 'log'>;

/** The streams of each pair, with the span of all rows of their file. */
export function streamsByPair(files: readonly ImportedFile[]): ReadonlyMap<string, NonEmpty<NamedStream>> {
  const byPair = new Map<string, [NamedStream, ...NamedStream[]]>();
  for (const { input, streams } of files) {
    for (const [index, stream] of streams.entries()) {
      // A unit that no pattern knows is counted where it was read; it is no pair.
      if (stream.subject.pair === '') continue;
      const span = { from: input.from ?? stream.first.time, to: input.to ?? stream.last.time };
      const item = { file: input.file, span, stream, name: `${input.file}\n${index}` };
      const list = byPair.get(stream.subject.pair);
      if (list === undefined) byPair.set(stream.subject.pair, [item]);
      else list.push(item);
    }
  }
  return byPair;
}

/** The streams of one pair with the journal that each file is part of, and, as `silent` finds them, those parts of its journals that say nothing of it. */
export function withLogs(
  [first, ...others]: NonEmpty<NamedStream>,
  sightings: readonly Sighting[],
  silent: (streams: NonEmpty<NamedStream>) => readonly NamedStream[],
  compare: LogComparison,
): NonEmpty<NamedCoverage> {
  const rest = [...others, ...silent([first, ...others])];
  const logs = continuedLogs(sightings, [first, ...rest], compare);
  const withLog = (c: NamedStream): NamedCoverage => ({
    ...c,
    log: logs.get(c.file) ?? c.file,
  });
  return [withLog(first), ...rest.map(withLog)];
}
