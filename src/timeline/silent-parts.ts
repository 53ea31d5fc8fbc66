import type { ImportedFile, Interval, NonEmpty, Stream } from '../vocabulary.ts';
import { groupBy } from './groups.ts';
import { type LogComparison, logName } from './one-log.ts';
import type { NamedStream } from './streams.ts';

/** A file of entries alone, and what it may be a part of. */
interface Journal extends Interval {
  readonly file: string;
  readonly name: string;
  readonly units: ReadonlySet<string>;
  readonly streams: NonEmpty<Stream>;
}

/**
 * Finds the journals without a row of a pair that are parts of one that has some, as streams of that pair: a day on which it says nothing is
 * observed all the same. Such a part bears the same name but for its numbers, tells of a unit that the others tell of too, and the same where both
 * were written.
 */
export function silentParts(
  files: readonly ImportedFile[],
  compare: LogComparison,
): (streams: NonEmpty<NamedStream>) => readonly NamedStream[] {
  const logs = groupBy(files.flatMap(journalIn), ({ name }) => name);
  const several = [...logs.values()].filter((parts) => parts.length > 1);
  const isOneLog = remembered((part, other) => [...part.units].some((unit) => other.units.has(unit)));
  return ([first, ...rest]) => {
    const own = new Set([first, ...rest].map(({ file }) => file));
    const { pair } = first.stream.subject;
    return several.flatMap((parts) => {
      const told = parts.filter(({ file }) => own.has(file));
      return parts
        .filter((part) => !own.has(part.file) && told.some((other) => isOneLog(part, other)))
        .filter((part) =>
          told.every((other) => isApart(part, other) || compare(part.file, other.file) !== 'different'),
        )
        .map((part) => silentStream(pair, part));
    });
  };
}

/** The same answers, each found once: all pairs of a site ask of the same files. */
function remembered(answer: (part: Journal, other: Journal) => boolean): typeof answer {
  const known = new Map<Journal, Map<Journal, boolean>>();
  return (part, other) => {
    const ofPart = known.get(part) ?? new Map<Journal, boolean>();
    known.set(part, ofPart);
    const found = ofPart.get(other) ?? answer(part, other);
    ofPart.set(other, found);
    return found;
  };
}

function journalIn({ input, streams: [first, ...rest] }: ImportedFile): readonly Journal[] {
  if (first === undefined || [first, ...rest].some(({ kind }) => kind !== 'entry')) return [];
  const units = new Set([first, ...rest].map(({ unit }) => unit));
  const span = { from: input.from ?? first.first.time, to: input.to ?? first.last.time };
  return [{ file: input.file, name: logName(input.file), units, streams: [first, ...rest], ...span }];
}

function isApart(a: Interval, b: Interval): boolean {
  return a.to < b.from || b.to < a.from;
}

function silentStream(pair: string, { file, from, to, streams }: Journal): NamedStream {
  const [begin] = streams;
  const stream = {
    ...begin,
    subject: { pair, half: null, role: null },
    signals: [],
    first: streams.reduce((a, b) => (b.first.time < a.first.time ? b : a)).first,
    last: streams.reduce((a, b) => (b.last.time > a.last.time ? b : a)).last,
    notUnderstood: [],
  };
  return { file, span: { from, to }, stream, name: `${file}\nsilent` };
}
