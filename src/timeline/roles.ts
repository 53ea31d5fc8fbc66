import type { NonEmpty, Source } from '../vocabulary.ts';
import type { Stamp } from './durations.ts';
import { findExchanges } from './exchanges.ts';
import { mergeSightings } from './merge.ts';
import type { TimelineRules } from './rules.ts';
import type { Sighting } from './sightings.ts';
import { noBreaks, type StateStep, toSteps } from './states.ts';
import { countUntil } from './tracks.ts';

/** The active role passed to `toHalf`. */
export interface Flip extends Stamp {
  readonly toHalf: string;
  readonly sources: NonEmpty<Source>;
  /** The export that showed it by exchanged identities; `null` if something else told it. */
  readonly file: string | null;
  /** Stated as a role, logged as a switchover, or read off exchanged identities. */
  readonly from: 'role' | 'switchover' | 'exchange';
  /** Streams that logged it as a switchover, or the export that showed it: what one of them tells twice are two. */
  readonly by: ReadonlySet<string>;
}

/**
 * Which half values that name a role alone are about, over time. It goes on as it was where no half is active: what the roles
 * of the halves are is for `roleStepsOf` to say, from what the lines state.
 */
export interface Roles {
  /** The half that was active when the log begins; `null` if nothing tells. */
  readonly first: string | null;
  readonly flips: readonly Flip[];
}

/** The half that role-addressed values call active at an instant; a flip counts from its `time` on. `null` if nothing tells. */
export function activeHalf({ first, flips }: Roles, time: number): string | null {
  const count = countUntil(flips, time);
  return count === 0 ? first : (flips[count - 1]?.toHalf ?? null);
}

/** The other half of a pair. */
export function otherHalf(halves: readonly string[], half: string): string {
  return halves.find((name) => name !== half) ?? half;
}

/**
 * Follows the active role through the roles the logs state, logged switchovers, and identities that two roles exchanged.
 * Where only roles are named, the first half is the one active when the log begins.
 */
export function readRoles(
  sightings: readonly Sighting[],
  halves: readonly string[],
  rules: TimelineRules,
): Roles {
  const stated = statedRoles(sightings, halves, rules);
  const logged = mergeSightings(
    sightings.filter((s) => s.signal === 'switchover'),
    rules,
  ).map((item) => ({ ...item, file: null, by: item.streams }));
  const exchanges = findExchanges(sightings).map((seen) => ({ ...seen, by: new Set([seen.file]) }));
  const isNamed = sightings.some((s) => s.subject.half !== null);
  // Without a half's name the first is the one active when the log begins.
  const unnamed = logged.length > 0 && !isNamed ? (halves[0] ?? null) : null;
  const first = firstActive(stated, sightings, halves, rules) ?? unnamed;
  if (first === null) return { first, flips: [] };
  const flips = statedFlips(stated, halves, first);
  return { first, flips: addToggles(flips, stated, [...exchanges, ...logged], halves, first, rules) };
}

type Stated = ReadonlyMap<string, readonly StateStep[]>;

/** The steps of each half's role as the lines state it. */
function statedRoles(
  sightings: readonly Sighting[],
  halves: readonly string[],
  rules: TimelineRules,
): Stated {
  const own = (half: string): readonly Sighting[] =>
    sightings.filter((s) => s.signal === 'role' && s.subject.half === half);
  return new Map(halves.map((half) => [half, toSteps(mergeSightings(own(half), rules), noBreaks)]));
}

function firstActive(
  stated: Stated,
  sightings: readonly Sighting[],
  halves: readonly string[],
  rules: TimelineRules,
): string | null {
  const firstSteps = halves.flatMap((half) =>
    (stated.get(half) ?? []).filter((s) => s.value !== 'none').map((step) => ({ half, step })),
  );
  const earliest = firstSteps.sort((a, b) => a.step.time - b.step.time)[0];
  if (earliest !== undefined) {
    const { half, step } = earliest;
    // In mid-log a first entry tells of a change; at the start of a log it states how things are.
    const changed = !step.initial && (sightings[0]?.time ?? step.time) < step.time - rules.lagMs;
    const wasActive = changed ? step.value === 'standby' : step.value === 'active';
    return wasActive ? half : otherHalf(halves, half);
  }
  const byRole = sightings.filter((s) => s.subject.role !== null);
  if (byRole.length === 0) return null;
  return anchor(byRole, sightings, halves) ?? halves[0] ?? null;
}

/** A serial (else a removal: it is the standby that is pulled) that is named with its half in another export. */
function anchor(
  byRole: readonly Sighting[],
  sightings: readonly Sighting[],
  halves: readonly string[],
): string | null {
  const named = sightings.filter((s) => s.subject.half !== null);
  for (const seen of byRole) {
    if (seen.signal !== 'serial' || seen.value === null) continue;
    const same = named.find((s) => s.signal === 'serial' && s.value === seen.value);
    const half = same?.subject.half ?? null;
    if (half !== null) return seen.subject.role === 'active' ? half : otherHalf(halves, half);
  }
  const pulled = named.find((s) => s.signal === 'removed')?.subject.half ?? null;
  return pulled === null ? null : otherHalf(halves, pulled);
}

/** A half takes the active role where it is stated, or where the only half whose role is ever stated becomes standby. */
function statedFlips(stated: Stated, halves: readonly string[], first: string): readonly Flip[] {
  const steps = halves
    .flatMap((half) => (stated.get(half) ?? []).map((step) => ({ half, step })))
    .sort((a, b) => a.step.time - b.step.time || a.step.earliest - b.step.earliest);
  const isSilent = (half: string): boolean => (stated.get(half) ?? []).length === 0;
  const flips: Flip[] = [];
  let active = first;
  for (const { half, step } of steps) {
    const other = otherHalf(halves, half);
    const passes = step.value === 'standby' && half === active && isSilent(other);
    const next = step.value === 'active' ? half : passes ? other : active;
    if (next === active) continue;
    active = next;
    const { time, earliest, resolution, sources } = step;
    flips.push({
      time,
      earliest,
      resolution,
      toHalf: next,
      sources,
      file: null,
      from: 'role',
      by: noStreams,
    });
  }
  return flips;
}

function addToggles(
  statedFlips: readonly Flip[],
  stated: Stated,
  toggles: readonly (Stamp & Pick<Flip, 'sources' | 'file' | 'by'>)[],
  halves: readonly string[],
  first: string,
  rules: TimelineRules,
): readonly Flip[] {
  const flips = [...statedFlips];
  for (const toggle of [...toggles].sort((a, b) => a.time - b.time)) {
    const before = activeHalf({ first, flips }, toggle.time);
    if (before === null || flips.some((f) => isNear(f, toggle, rules) && !areTwo(f, toggle))) continue;
    // The half that was active states that it is again: nothing passed.
    const takenBack = (stated.get(before) ?? []).some(
      (s) => s.value === 'active' && isNear(s, toggle, rules),
    );
    if (takenBack || isStatedByBoth(toggle, before, otherHalf(halves, before), stated, rules)) continue;
    const { time, earliest, resolution, sources, file, by } = toggle;
    const from = file === null ? 'switchover' : 'exchange';
    flips.push({ time, earliest, resolution, toHalf: otherHalf(halves, before), sources, file, from, by });
    flips.sort((a, b) => a.time - b.time);
  }
  return flips;
}

/**
 * The half that was active states that it left, and of the other too lines say what role it has: they say all of it. Where none
 * says that it took over, neither half is active, for as long as that goes on.
 */
function isStatedByBoth(
  toggle: Stamp,
  before: string,
  other: string,
  stated: Stated,
  rules: TimelineRules,
): boolean {
  const hasLeft = (stated.get(before) ?? []).some((s) => s.value !== 'active' && isNear(s, toggle, rules));
  return hasLeft && (stated.get(other) ?? []).length > 0;
}

const noStreams: ReadonlySet<string> = new Set();

/** What one export shows at two looks, or one unit logs at two stamps, is not one exchange. */
function areTwo(a: Pick<Flip, 'by' | 'time'>, b: Pick<Flip, 'by' | 'time'>): boolean {
  return a.time !== b.time && [...a.by].some((name) => b.by.has(name));
}

function isNear(a: Stamp, b: Stamp, rules: TimelineRules): boolean {
  return b.time + rules.lagMs > a.earliest && a.time + rules.lagMs > b.earliest;
}
