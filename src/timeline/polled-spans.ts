import type { Coverage, Interval, SourceLine, StreamPoint } from '../vocabulary.ts';
import { groupBy } from './groups.ts';
import type { Sighting } from './sightings.ts';

/** How many spacings after its last reading a poll still counts as read. Source: design.md, section 2, Observed. */
export const spacingsAfter = 3;

/** A span that one source observes, with its first and last line. */
export interface Watched extends Interval {
  /** The last row that was read in it. */
  readonly seenUntil: number;
  readonly first: SourceLine;
  readonly last: SourceLine;
}

/** A stream of readings, and what it tells. */
export interface Polled {
  readonly own: Coverage;
  readonly list: readonly Sighting[];
  readonly read: Interval;
}

/** What polls observe of a signal: between its readings, in all files of a poll. */
export function polledSpans(polled: readonly Polled[]): readonly Watched[] {
  const alike = groupBy(polled, ({ own }) => pollOf(own));
  return polled.flatMap(({ own, list, read }) => {
    const parts = alike.get(pollOf(own)) ?? [];
    const all = {
      from: Math.min(...parts.map((one) => one.read.from)),
      to: Math.max(...parts.map((one) => one.read.to)),
    };
    const holes = parts.length < 2 ? [] : parts.flatMap((one) => holesIn(one.own, one.list));
    return readSpans(own, list, { own: read, all, holes });
  });
}

/** Names what is one poll in several files: the same unit, of which the same signals are read. */
function pollOf({ stream }: Coverage): string {
  return [stream.unit, ...stream.signals.toSorted()].join('\n');
}

/** What a poll did not read, with the last line before and the first after it. */
interface Hole extends Interval {
  readonly last: SourceLine;
  readonly first: SourceLine;
}

/** Where a signal was not read in the midst of a file, in the order of time. */
function holesIn(
  { file, stream }: Pick<Coverage, 'file' | 'stream'>,
  sightings: readonly Sighting[],
): readonly Hole[] {
  return [
    ...stream.gaps.map(({ before, after }) => ({
      from: before.time,
      to: after.time,
      last: pointIn(file, before),
      first: pointIn(file, after),
    })),
    ...sightings
      .filter((s) => s.resumed)
      .map((s) => ({ from: s.earliest, to: s.time, last: s.sources[0], first: s.sources[0] })),
  ].sort((a, b) => a.from - b.from);
}

function pointIn(file: string, { line, text }: StreamPoint): SourceLine {
  return { file, line, text };
}

/**
 * `own`: from when to when the signal was read in this file; `all`: in all files of the poll: what is blank between is no end of it, but
 * where one of them has a hole there.
 */
function readSpans(
  { file, stream }: Coverage,
  sightings: readonly Sighting[],
  { own, all, holes }: { readonly own: Interval; readonly all: Interval; readonly holes: readonly Hole[] },
): readonly Watched[] {
  const line = (point: StreamPoint): SourceLine => pointIn(file, point);
  const before = holes.filter((hole) => hole.from < own.from).map((hole) => Math.min(hole.to, own.from));
  const begin = Math.min(own.from, Math.max(all.from, stream.first.time, ...before));
  const after = holes.filter((hole) => hole.to > own.to).map((hole) => Math.max(hole.from, own.to));
  const end = Math.max(own.to, Math.min(all.to, stream.last.time, ...after));
  const spans: Watched[] = [];
  let [from, first] = [begin, sightings[0]?.sources[0] ?? line(stream.first)];
  for (const hole of holesIn({ file, stream }, sightings)) {
    if (hole.to <= from) continue;
    if (hole.from > from) spans.push({ from, to: hole.from, seenUntil: hole.from, first, last: hole.last });
    [from, first] = [hole.to, hole.first];
  }
  const seenUntil = Math.max(from, end);
  const to = seenUntil + spacingsAfter * stream.spacing;
  return [...spans, { from, to, seenUntil, first, last: line(stream.last) }];
}
