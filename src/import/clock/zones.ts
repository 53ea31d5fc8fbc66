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

/** No zone of the IANA data is further from UTC than this, and none changes twice within it. */
const farthestMs = 26 * 3_600_000;

/**
 * The zone of an IANA name. The offset is looked up once per spell without a transition, so that a row costs a
 * comparison. Throws InputError for a name that the IANA data does not have.
 */
export function zoneOf(name: string, where: string): Zone {
  if (name === 'UTC' || name === 'Z') return utc;
  if (!isZone(name)) {
    throw new InputError(where, `"${name}" is not a time zone.`, 'Give an IANA name such as Europe/Lisbon.');
  }
  let offset = 0;
  let sureFrom = 0;
  let sureTo = 0;
  let fold: Fold = 'unique';
  let laterBy = 0;
  return {
    name,
    toUtc(local, last) {
      if (local >= sureFrom && local < sureTo) {
        fold = 'unique';
        laterBy = 0;
        return local - offset;
      }
      const found = lookUp(name, local, last);
      ({ offset, sureFrom, sureTo, fold, laterBy } = found);
      return found.instant;
    },
    lastFold: () => fold,
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

interface Found {
  readonly instant: number;
  readonly offset: number;
  readonly sureFrom: number;
  readonly sureTo: number;
  readonly fold: Fold;
  readonly laterBy: number;
}

function lookUp(name: string, local: number, last: number): Found {
  const clock = Temporal.Instant.fromEpochMilliseconds(local).toZonedDateTimeISO('UTC').toPlainDateTime();
  const earlier = clock.toZonedDateTime(name, { disambiguation: 'earlier' });
  const later = clock.toZonedDateTime(name, { disambiguation: 'later' });
  const same = earlier.epochMilliseconds === later.epochMilliseconds;
  const fold: Fold = same ? 'unique' : clock.equals(earlier.toPlainDateTime()) ? 'repeated' : 'missing';
  const length = fold === 'repeated' ? later.epochMilliseconds - earlier.epochMilliseconds : 0;
  const useLater = last - earlier.epochMilliseconds > length / 2 && fold === 'repeated';
  const zoned = useLater ? later : earlier;
  const offset = zoned.offsetNanoseconds / 1e6;
  const next = zoned.getTimeZoneTransition('next')?.epochMilliseconds ?? Number.MAX_SAFE_INTEGER;
  const previous = zoned.getTimeZoneTransition('previous')?.epochMilliseconds ?? Number.MIN_SAFE_INTEGER;
  return {
    instant: zoned.epochMilliseconds,
    offset,
    // Near a transition every reading is looked up: it may be repeated or missing.
    sureFrom: fold === 'unique' ? previous + offset + farthestMs : 0,
    sureTo: fold === 'unique' ? next + offset - farthestMs : 0,
    fold,
    laterBy: useLater ? 0 : length,
  };
}
