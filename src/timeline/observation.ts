import type {
  Coverage,
  Interval,
  Observation,
  PairTimeline,
  Signal,
  SourceLine,
  Unobserved,
} from '../vocabulary.ts';
import { clip, subtract, unite } from './coverage.ts';
import { groupBy, keyOf } from './groups.ts';
import { type Polled, polledSpans, type Watched } from './polled-spans.ts';
import type { Sighting } from './sightings.ts';
import { countWhile } from './tracks.ts';

type Covered = readonly (Coverage & { readonly name: string })[];

/**
 * What the sources of some sightings, all of one signal, observe of it between two instants. A poll observes between its readings, a journal
 * over all of its files, field notes nothing. Source: design.md, section 2, Observed.
 */
export function observations(
  coverage: Covered,
  span: Interval,
): (sightings: readonly Sighting[]) => Observation {
  const streams = new Map(coverage.map((c) => [c.name, c]));
  const logs = filesOfLogs(coverage);
  const ends = endsOf(coverage);
  // Most signals are told by the same journals: what these observe is one.
  const ofLogs = new Map<string, Observation>();
  return (sightings) => {
    const { polled, told } = tellersOf(sightings, streams);
    const watched = [...told].flatMap((log) => logs.get(log) ?? []);
    if (polled.length > 0) return fill([...polledSpans(polled), ...watched], ends, span);
    const key = [...told].sort().join('\n');
    const known = ofLogs.get(key) ?? fill(watched, ends, span);
    ofLogs.set(key, known);
    return known;
  };
}

/** The polls that some sightings are of, and the journals. */
function tellersOf(
  sightings: readonly Sighting[],
  streams: ReadonlyMap<string, Coverage>,
): { readonly polled: readonly Polled[]; readonly told: ReadonlySet<string> } {
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
  return { polled, told };
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

/** From when to when a signal was read. */
function readFromTo(sightings: readonly Sighting[]): Interval {
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { time, readUntil } of sightings) {
    from = Math.min(from, time);
    to = Math.max(to, readUntil);
  }
  return { from, to };
}

/** What each journal watches: all of its files. */
function filesOfLogs(coverage: Covered): ReadonlyMap<string, readonly Watched[]> {
  const byFile = groupBy(coverage, ({ file }) => file);
  const entries = coverage.filter((own) => logOf(own) !== null);
  const logs = groupBy(entries, (own) => logOf(own) ?? '');
  return new Map(
    [...logs].map(([log, list]) => [log, list.map((own) => wholeFile(own, byFile.get(own.file) ?? []))]),
  );
}

/** `all`: the streams of the pair in that file. */
function wholeFile({ file, span, stream }: Coverage, all: readonly Coverage[]): Watched {
  // The lines of this pair that stand first and last in the file: its own rows are those a person can look up.
  const own = all.map((c) => c.stream);
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
  ends: ReturnType<typeof endsOf>,
  { from, to }: Interval,
): Observation {
  const observed = clip(unite(watched), from, to);
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
