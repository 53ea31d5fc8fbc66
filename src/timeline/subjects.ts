import { type Happening, isStateSignal, type Signal } from '../vocabulary.ts';
import { activeHalf, type Flip, otherHalf, type Roles } from './roles.ts';
import type { TimelineRules } from './rules.ts';
import { Seen, type SeenFile } from './seen.ts';
import { ofPair, type Sighting, sightingWith } from './sightings.ts';
import { countUntil } from './tracks.ts';

/** A sighting that is known to be about one half, or about the pair (`null`). */
export interface Resolved extends Sighting {
  readonly half: string | null;
}

/** A sighting that is still columns, and about another half than it names. */
class SeenOf extends Seen {
  readonly about: string | null;

  constructor(of: SeenFile, place: number, half: string | null) {
    super(of, place);
    this.about = half;
  }

  override get half(): string | null {
    return this.about;
  }
}

const ofStandby: ReadonlySet<Signal> = new Set<Happening>([
  'inserted',
  'restart',
  'reflash-start',
  'reflash-end',
  'sync-start',
  'sync-failed',
]);

/**
 * Says of each sighting which half it is about. Role-addressed values follow the half that holds the role; after each
 * flip the other half takes over what is read under its new role. Sightings that no half can be found for are about the
 * pair. Source: design.md, section 2, Subjects.
 */
export function resolveSubjects(
  sightings: readonly Sighting[],
  roles: Roles,
  halves: readonly string[],
  rules: TimelineRules,
): readonly Resolved[] {
  const direct = sightings
    .filter((s) => s.signal !== 'role')
    .map((s) => aboutHalf(s, halfOf(s, sightings, roles, halves, rules)));
  return [...direct, ...afterFlips(sightings, roles, halves)];
}

/** A sighting that is about a half, or about the pair. */
export function aboutHalf(sighting: Sighting, half: string | null): Resolved {
  if (sighting instanceof Seen)
    return sighting.half === half ? sighting : new SeenOf(sighting.of, sighting.place, half);
  return { ...sightingWith(sighting, {}), half };
}

function halfOf(
  sighting: Sighting,
  all: readonly Sighting[],
  roles: Roles,
  halves: readonly string[],
  rules: TimelineRules,
): string | null {
  const { subject, signal, time } = sighting;
  if (ofPair.has(signal)) return null;
  if (subject.half !== null) return subject.half;
  const isState = isStateSignal(signal);
  // A happening belongs to the half that held the role just before: pulling the active half moves the role away.
  const active = activeHalf(roles, isState ? time : time - 1);
  if (active === null) return null;
  if (subject.role === 'active') return active;
  if (subject.role === 'standby' || ofStandby.has(signal)) return otherHalf(halves, active);
  if (signal === 'removed') return silenced(sighting, all, rules) ?? otherHalf(halves, active);
  return null;
}

/** The half that stops reporting after an unaddressed removal: its identity goes blank, or its role ends. */
function silenced(removal: Sighting, all: readonly Sighting[], rules: TimelineRules): string | null {
  const ended = all.find(
    (s) =>
      s.subject.half !== null &&
      (s.value === null || (s.signal === 'role' && s.value === 'none')) &&
      isStateSignal(s.signal) &&
      s.time >= removal.earliest &&
      s.time <= removal.time + rules.lagMs + s.spacing,
  );
  return ended?.subject.half ?? null;
}

/** What each role-addressed stream went on reading after a flip, now of the other half. */
function afterFlips(
  sightings: readonly Sighting[],
  roles: Roles,
  halves: readonly string[],
): readonly Resolved[] {
  if (roles.flips.length === 0) return [];
  const series = new Map<string, Sighting[]>();
  for (const sighting of sightings) {
    const { subject, signal } = sighting;
    if (subject.role === null || subject.half !== null || ofPair.has(signal) || !isStateSignal(signal))
      continue;
    if (sighting.kind !== 'reading') continue;
    const key = `${sighting.stream}\n${subject.role}\n${signal}`;
    const list = series.get(key);
    if (list === undefined) series.set(key, [sighting]);
    else list.push(sighting);
  }
  return [...series.values()].flatMap((list) =>
    roles.flips.flatMap((flip) => rereadAt(flip, list, roles, halves)),
  );
}

function rereadAt(
  flip: Flip,
  series: readonly Sighting[],
  roles: Roles,
  halves: readonly string[],
): readonly Resolved[] {
  const place = countUntil(series, flip.time, 'before');
  const current = series[place - 1];
  if (current === undefined) return [];
  const sameRows = flip.file !== null && flip.file === current.sources[0].file;
  const { readUntil } = current;
  if (readUntil < flip.time) return [];
  const time = sameRows ? flip.time : Math.min(readUntil, flip.time + 3 * current.spacing);
  const active = activeHalf(roles, flip.time);
  if (active === null) return [];
  const half = current.subject.role === 'active' ? active : otherHalf(halves, active);
  const sources = sameRows ? flip.sources : current.sources;
  const earliest = Math.min(flip.earliest, time);
  const reread = { time, earliest, initial: false, resumed: false, sources };
  return [{ ...sightingWith(current, reread), half }];
}
