import type { Interval, Setting } from '../../vocabulary.ts';
import type { DatePattern } from './date-pattern.ts';
import { type Doubt, repeatedHourWatch } from './repeated-hour.ts';
import type { DateOrder, Stamp, StampFailure, StampOptions } from './stamp.ts';
import { readStamp } from './timestamps.ts';
import { isZone, type Zone, zoneOf } from './zones.ts';

/** Reads the stamps of one file in the order of its rows. */
export interface TimeReader {
  readonly order: DateOrder | undefined;
  /** Milliseconds UTC, or why the text is no time. `end` tells where the stamp ended. */
  read(text: string): number | StampFailure;
  end(): number;
  /** The stamp that was read last, before a zone was applied; undefined before the first. */
  lastStamp(): Stamp | undefined;
  /** Takes a stamp that names its year and was read elsewhere, in its turn, as `read` would; so many rows have it. */
  take(clock: number, isInstant: boolean, hasDecimals: boolean, rows: number): number;
  /** True where the phrasebook says how stamps are written. */
  hasPattern(): boolean;
  /** True once a stamp with decimals was read. */
  hasDecimals(): boolean;
  /** How many stamps stood in a repeated or in a missing hour. */
  folds(): { readonly repeated: number; readonly missing: number };
  /** The stamps in repeated hours that the order of the rows leaves open. */
  doubts(): readonly Doubt[];
  /** The earliest and the latest instant that was read; `null` before the first. */
  extent(): Interval | null;
  /** True if a stamp was read that said neither zone nor offset. */
  usedZone(): boolean;
  setDay(day: number): void;
  /** A reader of the stamps of another column of the same rows, which follow each other by themselves; the first is near to what was read last. */
  another(): TimeReader;
  /** The year that was taken for the first stamp that prints none; undefined where all print theirs. */
  yearTaken(): number | undefined;
}

/**
 * A reader of stamps in a zone. A year that is not printed goes on over New Year. A stated pattern comes first; what it
 * does not fit is read as any other stamp. Where only `near` gives the year, an instant of other files, the first stamp
 * without one is the nearest to it, before New Year or after.
 */
export function timeReader(
  zone: Zone,
  order: DateOrder | undefined,
  year: number | undefined,
  pattern?: DatePattern,
  near?: number,
): TimeReader {
  let stampRead: Stamp | undefined;
  const zones = namedZones();
  const known: Known = {
    options: { order, year, day: undefined, zoneNamed: zones },
    near,
    yearTaken: undefined,
  };
  const instants = instantsIn(zone);
  const { seen, watch, take } = instants;
  return {
    order,
    read(text) {
      const stamp = nextStamp(text, known, seen.last, pattern);
      if (typeof stamp === 'string') return stamp;
      stampRead = stamp;
      const own = stamp.zone === undefined ? null : zones(stamp.zone);
      if (own !== null) return instants.takeIn(stamp.clock, own, stamp.hasDecimals);
      return take(stamp.clock, stamp.isInstant, stamp.hasDecimals, 1);
    },
    lastStamp: () => stampRead,
    take,
    hasPattern: () => pattern !== undefined,
    end: () => stampRead?.end ?? 0,
    hasDecimals: () => seen.hasDecimals,
    folds: watch.folds,
    doubts: watch.doubts,
    extent: () => (seen.from <= seen.to ? { from: seen.from, to: seen.to } : null),
    usedZone: () => seen.isZoned,
    setDay(day) {
      known.options = { ...known.options, day };
    },
    another: () => timeReader(zone, order, known.options.year, pattern, seen.last),
    yearTaken: () => known.yearTaken,
  };
}

/** The instants of the rows of a file, one after the other. */
interface Instants {
  readonly seen: {
    readonly last: number;
    readonly from: number;
    readonly to: number;
    readonly hasDecimals: boolean;
    readonly isZoned: boolean;
  };
  readonly watch: ReturnType<typeof repeatedHourWatch>;
  readonly take: TimeReader['take'];
  /** Takes the clock of a zone that a stamp names itself. */
  takeIn(clock: number, zone: Zone, hasDecimals: boolean): number;
}

function instantsIn(zone: Zone): Instants {
  // A number that changes with every row is kept in its place in an object.
  const seen = {
    last: Number.NEGATIVE_INFINITY,
    from: Number.POSITIVE_INFINITY,
    to: Number.NEGATIVE_INFINITY,
    hasDecimals: false,
    isZoned: false,
  };
  const watch = repeatedHourWatch();
  const takeIn = (clock: number, own: Zone, hasDecimals: boolean): number => {
    const at = keep(own.toUtc(clock, seen.last), hasDecimals);
    watch.take(at, own);
    return at;
  };
  const keep = (at: number, hasDecimals: boolean): number => {
    seen.hasDecimals = seen.hasDecimals || hasDecimals;
    seen.last = at;
    if (at < seen.from) seen.from = at;
    if (at > seen.to) seen.to = at;
    return at;
  };
  const take = (clock: number, isInstant: boolean, hasDecimals: boolean, rows: number): number => {
    if (isInstant) return keep(clock, hasDecimals);
    seen.isZoned = true;
    takeIn(clock, zone, hasDecimals);
    // Where the stamp is unique, the same once more changes nothing.
    if (rows > 1 && zone.lastFold() !== 'unique') take(clock, isInstant, hasDecimals, rows - 1);
    return seen.last;
  };
  return { seen, watch, take, takeIn };
}

/** The zones that stamps name, each looked up once. */
function namedZones(): (name: string) => Zone | null {
  const zones = new Map<string, Zone | null>();
  return (name) => {
    const known = zones.get(name);
    if (known !== undefined) return known;
    const found = isZone(name) ? zoneOf(name, '') : null;
    // No log names so many.
    if (zones.size < mostZones) zones.set(name, found);
    return found;
  };
}

const mostZones = 1000;

/** What the stamps so far leave to the next. */
interface Known {
  options: StampOptions;
  /** An instant that the first stamp without a year is near to. */
  readonly near: number | undefined;
  yearTaken: number | undefined;
}

/** Reads the stamp after the one of an instant: past New Year it is of the next year, where it prints none. */
function nextStamp(
  text: string,
  known: Known,
  last: number,
  pattern: DatePattern | undefined,
): Stamp | StampFailure {
  const own = pattern?.read(text, known.options) ?? 'no-date';
  const isOwn = own !== 'no-date';
  const stamp = isOwn ? own : readStamp(text, known.options);
  if (typeof stamp === 'string') return stamp;
  const { year } = known.options;
  if (year === undefined) return stamp;
  const isFirst = known.yearTaken === undefined && known.near !== undefined;
  const away = isFirst ? stamp.clock - (known.near ?? 0) : stamp.clock - last;
  if (!isFirst && away >= -halfYearMs) return stamp;
  if (isOwn ? pattern?.hasYear === true : stamp.isInstant || yearOrClock.test(text.slice(0, stamp.end)))
    return stamp;
  const right = away < -halfYearMs ? year + 1 : isFirst && away > halfYearMs ? year - 1 : year;
  if (isFirst) known.yearTaken = right;
  if (right === year) return stamp;
  known.options = { ...known.options, year: right };
  return isOwn && pattern !== undefined ? pattern.read(text, known.options) : readStamp(text, known.options);
}

/** A year is printed, or no date at all. */
const yearOrClock = /\d{4}|^\s*\d{1,2}:/;
const halfYearMs = 183 * 86_400_000;

const explanations: Readonly<Record<StampFailure, string>> = {
  'no-date': 'is not a date',
  'out-of-range': 'is not a date that exists',
  order: 'may be day-first or month-first',
  year: 'has no year',
  day: 'has no date',
  zone: 'names its time zone by letters that stand for several',
};

const remedies: Readonly<Record<StampFailure, string>> = {
  'no-date': 'Correct the row, or name the time column in the phrasebook.',
  'out-of-range': 'Correct the row, or set time.order in the phrasebook.',
  order: 'Set time.order in the phrasebook.',
  year: 'Set time.year in the phrasebook to the year of the first row.',
  day: 'Put a line with the date before it.',
  zone: 'Export it with an offset, or set time.zone and time.format in the phrasebook, with the letters in quotes.',
};

/** Why a text is no time, and what to do about it, for a message to the user. */
export function explain(
  text: string,
  failure: StampFailure,
): { readonly what: string; readonly fix: string; readonly setting?: Setting } {
  const what = `"${text.slice(0, 60)}" ${explanations[failure]}.`;
  const isAsked = failure === 'order' || failure === 'year';
  return { what, fix: remedies[failure], ...(isAsked ? { setting: failure } : {}) };
}
