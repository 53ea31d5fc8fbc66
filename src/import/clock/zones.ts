import { Temporal } from 'temporal-polyfill';
import { InputError } from '../bytes/input-error.ts';

/** How a local clock reading became an instant. */
export type Fold = 'unique' | 'repeated' | 'missing';

/** A time zone as a function from its clock to UTC; both in milliseconds, the local ones counted as if they were UTC. */
export interface Zone {
  readonly name: string;
  /**
   * The instant; of a repeated hour the earlier one, unless that lies so far before `last`, the instant read before it,
   * that the clock must have been set back in between. A stray row is late by a little, not by most of an hour.
   */
  toUtc(local: number, last: number): number;
  /** What kind of reading it was: most are unique. Only the last reading given to `toUtc` is remembered. */
  lastFold(): Fold;
  /** Milliseconds by which the last reading may be later: the length of a repeated hour that was read as the earlier. */
  laterBy(): number;
}

const utc: Zone = { name: 'UTC', toUtc: (local) => local, lastFold: () => 'unique', laterBy: () => 0 };

/**
 * The zone of an IANA name. What the clock is ahead by is looked up once per spell without a change, and once per hour that
 * is repeated or left out, so that a row costs a comparison. Throws InputError for a name that the IANA data does not have.
 */
export function zoneOf(name: string, where: string): Zone {
  if (name === 'UTC' || name === 'Z') return utc;
  if (!isZone(name)) {
    throw new InputError(where, `"${name}" is not a time zone.`, 'Give an IANA name such as Europe/Lisbon.');
  }
  let spell: Spell = { from: 0, to: 0, fold: 'unique', earlier: 0, later: 0 };
  let laterBy = 0;
  return {
    name,
    toUtc(local, last) {
      if (local < spell.from || local >= spell.to) spell = spellAt(name, local);
      const instant = local - spell.earlier;
      const length = spell.earlier - spell.later;
      laterBy = last - instant > length / 2 ? 0 : length;
      return laterBy === length ? instant : local - spell.later;
    },
    lastFold: () => spell.fold,
    laterBy: () => laterBy,
  };
}

/** Whether the IANA data has a zone of that name. */
export function isZone(name: string): boolean {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(name);
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

/** Readings of the clock that all become instants in one way; milliseconds, `from` among them, `to` not. */
interface Spell {
  readonly from: number;
  readonly to: number;
  readonly fold: Fold;
  /** What the clock is ahead of UTC by at the earlier instant that shows the reading, and at the later; mostly one. */
  readonly earlier: number;
  readonly later: number;
}

function spellAt(name: string, local: number): Spell {
  const clock = Temporal.Instant.fromEpochMilliseconds(local).toZonedDateTimeISO('UTC').toPlainDateTime();
  const earlier = clock.toZonedDateTime(name, { disambiguation: 'earlier' });
  const later = clock.toZonedDateTime(name, { disambiguation: 'later' });
  if (earlier.epochMilliseconds === later.epochMilliseconds) return uniqueSpell(earlier);
  // The change lies between the two, or at the later of them.
  const change = later.add({ milliseconds: 1 }).getTimeZoneTransition('previous') ?? later;
  const readings = readingsOf(change);
  const isRepeated = clock.equals(earlier.toPlainDateTime());
  const ahead = local - earlier.epochMilliseconds;
  return {
    from: Math.min(...readings),
    to: Math.max(...readings),
    fold: isRepeated ? 'repeated' : 'missing',
    earlier: ahead,
    later: isRepeated ? local - later.epochMilliseconds : ahead,
  };
}

/**
 * From the last change of the zone, or the end of the hour that it repeats or leaves out, to the next, or the start of such an
 * hour.
 */
function uniqueSpell(zoned: Temporal.ZonedDateTime): Spell {
  // At the very instant of a change Temporal gives the one before it, unless asked from a moment later on.
  const previous = zoned.add({ milliseconds: 1 }).getTimeZoneTransition('previous');
  const next = zoned.getTimeZoneTransition('next');
  const ahead = zoned.offsetNanoseconds / 1e6;
  return {
    from: previous === null ? Number.NEGATIVE_INFINITY : Math.max(...readingsOf(previous)),
    to: next === null ? Number.POSITIVE_INFINITY : Math.min(...readingsOf(next)),
    fold: 'unique',
    earlier: ahead,
    later: ahead,
  };
}

/** What the clock shows at a change, by the offset before it and by the one after. */
function readingsOf(change: Temporal.ZonedDateTime): readonly number[] {
  const before = change.subtract({ milliseconds: 1 });
  return [before, change].map((zoned) => change.epochMilliseconds + zoned.offsetNanoseconds / 1e6);
}
