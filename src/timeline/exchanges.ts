import type { NonEmpty, Source } from '../vocabulary.ts';
import type { Stamp } from './durations.ts';
import type { Sighting } from './sightings.ts';

/** The roles of the two halves exchanged, seen without a word about which half is which. */
export interface Exchange extends Stamp {
  readonly sources: NonEmpty<Source>;
  /** The streams of the file that showed it: its rows at `time` already speak of the new roles. */
  readonly file: string;
}

const identitySignals = ['serial', 'model', 'firmware'] as const;

/**
 * Switchovers read off an export that addresses values by role only: the active role takes over what the standby was,
 * or the standby shows what the active was. Serials decide; without them models; without those firmware, where only the
 * active role's change counts, since a standby may be replaced by, or reflashed to, what the active has.
 * Source: design.md, section 2, Subjects.
 */
export function findExchanges(sightings: readonly Sighting[]): readonly Exchange[] {
  const byFile = new Map<string, Sighting[]>();
  for (const sighting of sightings) {
    if (sighting.subject.role === null || sighting.subject.half !== null) continue;
    const file = sighting.sources[0].file;
    const list = byFile.get(file);
    if (list === undefined) byFile.set(file, [sighting]);
    else list.push(sighting);
  }
  return [...byFile.entries()].flatMap(([file, list]) => exchangesOfFile(file, list));
}

function exchangesOfFile(file: string, sightings: readonly Sighting[]): readonly Exchange[] {
  const signal = identitySignals.find((name) => sightings.some((s) => s.signal === name && s.value !== null));
  const identities = sightings
    .filter((s) => s.signal === signal)
    .sort((a, b) => a.time - b.time || roleOrder(a) - roleOrder(b));
  const exchanges: Exchange[] = [];
  let active: string | null = null;
  let standby: string | null = null;
  let activeBefore: { time: number; value: string | null } = { time: -1, value: null };
  for (const { subject, value, time, earliest, resolution, sources, initial } of identities) {
    const isActive = subject.role === 'active';
    const own: string | null = isActive ? active : standby;
    const other: string | null = isActive ? standby : active;
    const takesOther =
      value === other || (!isActive && time === activeBefore.time && value === activeBefore.value);
    const counts = !initial && value !== null && value !== own && (isActive || signal === 'serial');
    if (isActive && value !== active) activeBefore = { time, value: active };
    if (counts && takesOther) {
      exchanges.push({ time, earliest, resolution, sources, file });
      // The other role's row of the same poll confirms or corrects what it took in exchange.
      if (isActive) standby = own;
      else if (value === other) active = own;
    }
    if (isActive) active = value;
    else standby = value;
  }
  return exchanges;
}

function roleOrder(sighting: Sighting): number {
  return sighting.subject.role === 'active' ? 0 : 1;
}
