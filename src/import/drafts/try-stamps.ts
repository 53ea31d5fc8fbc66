import type { FileDraft, TriedStamps } from '../../vocabulary.ts';
import type { DateOrder } from '../clock/stamp.ts';
import { explain, timeReader } from '../clock/time-reader.ts';
import { zoneOf } from '../clock/zones.ts';
import { ruleFor, withStamps } from '../phrasebook/file-subject.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';

/** What a person would say of stamps; `null` leaves it to the phrasebook and the files. */
export interface SaidOfStamps {
  readonly zone: string | null;
  readonly order: DateOrder | null;
  readonly year: number | null;
}

/**
 * The first stamps of each file as they would be read. Throws InputError for a zone that does not exist.
 */
export function tryStamps(
  files: readonly FileDraft[],
  phrasebook: Phrasebook,
  { zone, order, year }: SaidOfStamps,
): readonly TriedStamps[] {
  return files.flatMap(({ file, stamps, isZoneOpen }) => {
    if (stamps.length === 0) return [];
    const own = withStamps(
      {
        ...phrasebook,
        zone: zone ?? phrasebook.zone,
        order: order ?? phrasebook.order,
        year: year ?? phrasebook.year,
      },
      ruleFor(phrasebook, file),
    );
    const times = timeReader(zoneOf(own.zone ?? 'UTC', file), own.order, own.year, own.pattern);
    const read = stamps.map((text) => {
      const at = times.read(text);
      return typeof at === 'number'
        ? { text, at, problem: null }
        : { text, at: null, problem: explain(text, at).what };
    });
    return [{ file, isZoneOpen, stamps: read }];
  });
}
