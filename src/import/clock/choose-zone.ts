import { type Zone, zoneOf } from './zones.ts';

/** The zone for stamps that name none, and why; `assumed` if nothing says so. */
export interface ChosenZone {
  readonly zone: Zone;
  readonly because: string;
  readonly assumed: boolean;
}

/** The zone that a phrasebook names, and the file it stands in. */
interface ZoneText {
  readonly zone: string | undefined;
  readonly file: string;
}

/** What the user says comes first, then the phrasebook; without a word it is UTC, never the computer's zone. */
export function chooseZone(
  name: string,
  { zone, phrasebook }: { readonly zone: string | null; readonly phrasebook: ZoneText },
): ChosenZone {
  if (zone !== null) return { zone: zoneOf(zone, '--zone'), because: 'from --zone', assumed: false };
  if (phrasebook.zone !== undefined) {
    return {
      zone: zoneOf(phrasebook.zone, phrasebook.file),
      because: 'from the phrasebook',
      assumed: false,
    };
  }
  return { zone: zoneOf('UTC', name), because: 'none was given', assumed: true };
}
