import type {
  Coverage,
  Interval,
  Observation,
  PairTimeline,
  Signal,
  SourceLine,
  StreamPoint,
  Unobserved,
} from '../vocabulary.ts';
import { clip, subtract, unite } from './coverage.ts';
import { groupBy, keyOf } from './groups.ts';
import type { Sighting } from './sightings.ts';
import { countWhile } from './tracks.ts';

/** How many spacings after its last reading a poll still counts as read. Source: design.md, section 2, Observed. */
export const spacingsAfter = 3;

/** A span that one source observes, with its first and last line. */
interface Watched extends Interval {
  /** The last row that was read in it. */
  readonly seenUntil: number;
  readonly first: SourceLine;
  readonly last: SourceLine;
}

/**
 * What the sources of some sightings, all of one signal, observe of it between two instants. A poll observes between its readings, a journal
 * over all of its files, field notes nothing. Source: design.md, section 2, Observed.
 */
export function observationOf(
  sightings: readonly Sighting[],
  coverage: readonly (Coverage & { readonly name: string })[],
  { from, to }: Interval,
): Observation {
  const streams = new Map(coverage.map((c) => [c.name, c]));
  const byStream = new Map<string, Sighting[]>();
  for (const sighting of sightings) {
    if (sighting.kind === 'note') continue;
    const list = byStream.get(sighting.stream);
    if (list === undefined) byStream.set(sighting.stream, [sighting]);
    else list.push(sighting);
  }
  const told = new Set([...byStream.keys()].flatMap((name) => logOf(streams.get(name)) ?? []));
  const polled = [...byStream].flatMap(([name, list]) => {
    const own = streams.get(name);
    return own?.stream.kind === 'reading' ? [{ own, list, read: readFromTo(list) }] : [];
  });
  const alike = groupBy(polled, ({ own }) => pollOf(own));
  const watched = [
    ...polled.flatMap(({ own, list, read }) => {
      const parts = alike.get(pollOf(own)) ?? [];
      const all = {
        from: Math.min(...parts.map((one) => one.read.from)),
        to: Math.max(...parts.map((one) => one.read.to)),
      };
      const holes = parts.length < 2 ? [] : parts.flatMap((one) => holesIn(one.own, one.list));
      return readSpans(own, list, { own: read, all, holes });
    }),
    ...coverage.flatMap((own) => (told.has(logOf(own) ?? '') ? [wholeFile(own, coverage)] : [])),
  ];
  return fill(watched, coverage, from, to);
}

/** What was observed of a signal; nothing where no source ever tells of it. */
export function observationFor(timeline: PairTimeline, half: string | null, signal: Signal): Observation {
  return timeline.observation.get(keyOf(half, signal)) ?? { observed: [], unobserved: [], seenUntil: null };
}

/** The part of what was not observed of a signal that lies between two instants. */
export function unobservedIn(
  timeline: PairTimeline,
  half: string | null,
  signal: Signal,
  from: number,
  to: number,
): readonly Unobserved[] {
  const { unobserved } = observationFor(timeline, half, signal);
  return unobserved
    .filter((u) => u.to > from && u.from < to)
    .map((u) => ({ ...u, from: Math.max(u.from, from), to: Math.min(u.to, to) }));
}

/** The journal that a stream of entries is part of. */
function logOf(coverage: Coverage | undefined): string | null {
  return coverage?.stream.kind === 'entry' ? coverage.log : null;
}

/** Names what is one poll in several files: the same unit, of which the same signals are read. */
function pollOf({ stream }: Coverage): string {
  return [stream.unit, ...stream.signals.toSorted()].join('\n');
}

/** From when to when a signal was read. */
function readFromTo(sightings: readonly Sighting[]): Interval {
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { time, readUntil } of sightings) {
    from = Math.min(from, time);
    to = Math.max(to, readUntil);
  }
  return { from, to };
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

function wholeFile({ file, span, stream }: Coverage, coverage: readonly Coverage[]): Watched {
  // The lines of this pair that stand first and last in the file: its own rows are those a person can look up.
  const own = coverage.filter((c) => c.file === file).map((c) => c.stream);
  const first = own.reduce((a, b) => (b.first.time < a.time ? b.first : a), stream.first);
  const last = own.reduce((a, b) => (b.last.time > a.time ? b.last : a), stream.last);
  return {
    from: span.from,
    to: span.to,
    seenUntil: span.to,
    first: { file, line: first.line, text: first.text },
    last: { file, line: last.line, text: last.text },
  };
}

/** What the spans cover between two instants, and what is left, with the lines on either side of it. */
function fill(
  watched: readonly Watched[],
  coverage: readonly Coverage[],
  from: number,
  to: number,
): Observation {
  const observed = clip(unite(watched), from, to);
  const ends = endsOf(coverage);
  const byEnd = [...watched].sort((a, b) => a.to - b.to);
  const byBegin = [...watched].sort((a, b) => a.from - b.from);
  const seen = watched.map((w) => w.seenUntil).filter((until) => until >= from);
  return {
    observed,
    seenUntil:
      seen.length === 0
        ? null
        : Math.min(
            to,
            seen.reduce((a, b) => Math.max(a, b)),
          ),
    unobserved: subtract([{ from, to }], observed)
      .filter((gap) => gap.to > gap.from)
      .map((gap): Unobserved => {
        const before = byEnd[countWhile(byEnd, (w) => w.to <= gap.from) - 1];
        const after = byBegin[countWhile(byBegin, (w) => w.from < gap.to)];
        return { ...gap, evidence: [before?.last ?? ends.first, after?.first ?? ends.last] };
      }),
  };
}

function endsOf(coverage: readonly Coverage[]): { readonly first: SourceLine; readonly last: SourceLine } {
  const nothing: SourceLine = { file: '', line: 1, text: '' };
  const lineOf = (c: Coverage | undefined, point: 'first' | 'last'): SourceLine =>
    c === undefined ? nothing : { file: c.file, line: c.stream[point].line, text: c.stream[point].text };
  const byFirst = [...coverage].sort((a, b) => a.stream.first.time - b.stream.first.time);
  const byLast = [...coverage].sort((a, b) => b.stream.last.time - a.stream.last.time);
  return { first: lineOf(byFirst[0], 'first'), last: lineOf(byLast[0], 'last') };
}
