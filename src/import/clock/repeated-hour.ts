import { topicAt, withTimes } from '../../changes.ts';
import type { Changes, Interval, Stream, StreamPoint } from '../../vocabulary.ts';
import type { Zone } from './zones.ts';

/** Stamps in an hour that the clocks repeat, read as the earlier hour though the order of rows does not say which. */
export interface Doubt {
  /** First and last instant, read as the earlier hour. */
  readonly from: number;
  readonly to: number;
  /** How much later they may be, in milliseconds. */
  readonly by: number;
  /** From the stamp before to the first of them, and from the last of them, read as the later hour, to the next stamp. */
  readonly stepBefore: number;
  readonly stepAfter: number;
  readonly count: number;
}

/** Follows the stamps of a file through the hours that the clocks repeat or leave out. */
export interface RepeatedHourWatch {
  /** Takes the next instant in the order of rows, as the zone has just read it. */
  take(time: number, zone: Zone): void;
  /** How many stamps stood in a repeated or in a missing hour. */
  folds(): { readonly repeated: number; readonly missing: number };
  doubts(): readonly Doubt[];
}

/** A watch of one file. Rows that go back into the hour once more settle which hour it was. */
export function repeatedHourWatch(): RepeatedHourWatch {
  const closed: Doubt[] = [];
  const folds = { repeated: 0, missing: 0 };
  let open: Doubt | null = null;
  // An object, not a variable: a number that changes with every row is kept in its place there.
  const seen = { last: Number.NEGATIVE_INFINITY };
  const next = (time: number, laterBy: number, isRepeated: boolean): Doubt | null => {
    if (laterBy > 0) {
      if (open === null)
        return {
          from: time,
          to: time,
          by: laterBy,
          stepBefore: time - seen.last,
          stepAfter: Infinity,
          count: 1,
        };
      return { ...open, from: Math.min(open.from, time), to: Math.max(open.to, time), count: open.count + 1 };
    }
    if (open !== null && !isRepeated) closed.push({ ...open, stepAfter: time - open.to - open.by });
    return null;
  };
  return {
    take(time, zone) {
      const fold = zone.lastFold();
      if (fold !== 'unique') folds[fold] += 1;
      if (fold === 'repeated' || open !== null) open = next(time, zone.laterBy(), fold === 'repeated');
      seen.last = time;
    },
    folds: () => folds,
    doubts: () => (open === null ? closed : [...closed, open]),
  };
}

/** What a file says, with the extent of its stamps; `null` if it has none. */
interface Settled {
  readonly streams: readonly Stream[];
  readonly changes: Changes;
  readonly extent: Interval | null;
}

const minuteMs = 60_000;
/** A step of up to this many usual spacings goes on as before. Source: design.md, section 2, Unobserved. */
const mostSpacings = 3;

/**
 * Streams and changes with what the repeated hour leaves open. A poll that goes on at its usual spacing, from before or
 * to after, shows which hour it was; what nothing settles happened in either: both hours are its bounds.
 */
export function settleRepeatedHour(read: Settled, doubts: readonly Doubt[]): Settled {
  if (doubts.length === 0) return read;
  const laterBy = (time: number, spacing: number, hours: readonly Hour[]): number => {
    const doubt = doubts.find((d) => time >= d.from && time <= d.to);
    return doubt !== undefined && hours.includes(hourOf(spacing, doubt)) ? doubt.by : 0;
  };
  const changes = withTimes(read.changes, (place, { time, earliest }) => {
    const spacing = read.streams[topicAt(read.changes, place)?.stream ?? -1]?.spacing ?? 0;
    return {
      time: time + laterBy(time, spacing, ['later', 'either']),
      earliest: earliest + laterBy(earliest, spacing, ['later']),
    };
  });
  const streams = read.streams.map((stream) => {
    const moved = (point: StreamPoint): StreamPoint => ({
      ...point,
      time: point.time + laterBy(point.time, stream.spacing, ['later']),
    });
    const reads = stream.reads.map((read) => ({
      ...read,
      to: read.to + laterBy(read.to, stream.spacing, ['later']),
    }));
    const gaps = stream.gaps.map(({ before, after }) => ({ before: moved(before), after: moved(after) }));
    return {
      ...stream,
      first: moved(stream.first),
      last: moved(stream.last),
      reads,
      notUnderstood: movedMinutes(stream, doubts),
      gaps: gaps.filter((g) => g.after.time - g.before.time > mostSpacings * stream.spacing),
    };
  });
  return { streams, changes, extent: extentOf(read, streams) };
}

/** A first or last stamp goes with the stream that has it; where none does, or it is left open, it stays the earlier hour. */
function extentOf({ extent, streams: before }: Settled, after: readonly Stream[]): Interval | null {
  if (extent === null) return null;
  const moved = (at: number, end: 'first' | 'last'): number =>
    after[before.findIndex((stream) => stream[end].time === at)]?.[end].time ?? at;
  return { from: moved(extent.from, 'first'), to: moved(extent.to, 'last') };
}

/** The minutes of rows that were not understood, in the order of time again: the later hour may hold others of them. */
function movedMinutes({ notUnderstood, spacing }: Stream, doubts: readonly Doubt[]): Stream['notUnderstood'] {
  const counts = new Map<number, number>();
  for (const { from, count } of notUnderstood) {
    const doubt = doubts.find((d) => from + minuteMs > d.from && from <= d.to);
    const minute = from + (doubt !== undefined && hourOf(spacing, doubt) === 'later' ? doubt.by : 0);
    counts.set(minute, (counts.get(minute) ?? 0) + count);
  }
  return [...counts].map(([from, count]) => ({ from, count })).sort((a, b) => a.from - b.from);
}

type Hour = 'earlier' | 'later' | 'either';

/** Which hour it was for a stream, as far as anything tells; journals have no spacing. */
function hourOf(spacing: number, { stepBefore, stepAfter }: Doubt): Hour {
  const usual = mostSpacings * spacing;
  if (stepBefore <= usual) return 'earlier';
  return stepAfter <= usual ? 'later' : 'either';
}
