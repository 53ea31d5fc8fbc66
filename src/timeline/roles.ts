import type { NonEmpty, Source } from '../vocabulary.ts';
import type { Stamp } from './durations.ts';
import { type Exchange, findExchanges } from './exchanges.ts';
import { mergeSightings } from './merge.ts';
import type { TimelineRules } from './rules.ts';
import type { Sighting } from './sightings.ts';
import { type StateStep, toSteps } from './states.ts';
import { countUntil } from './tracks.ts';

/** The active role passed to `toHalf`. */
export interface Flip extends Stamp {
  readonly toHalf: string;
  readonly sources: NonEmpty<Source>;
  /** The export that showed it by exchanged identities; `null` if something else told it. */
  readonly file: string | null;
}

/** Which half was active when, and the steps of each half's role. */
export interface Roles {
  /** The half that was active when the log begins; `null` if nothing tells. */
  readonly first: string | null;
  readonly flips: readonly Flip[];
  readonly steps: ReadonlyMap<string, readonly StateStep[]>;
}

/** The active half at an instant; a flip counts from its `time` on. `null` if nothing tells. */
export function activeHalf(roles: Roles, time: number): string | null {
  const count = countUntil(roles.flips, time);
  return count === 0 ? roles.first : (roles.flips[count - 1]?.toHalf ?? null);
}

/** The other half of a pair. */
export function otherHalf(halves: readonly string[], half: string): string {
  return halves.find((name) => name !== half) ?? half;
}

/**
 * Rebuilds who was active when from the roles the logs state, from logged switchovers, and from identities that two
 * roles exchanged. Where only roles are named, the first half is the one active when the log begins.
 */
export function readRoles(
  sightings: readonly Sighting[],
  halves: readonly string[],
  rules: TimelineRules,
): Roles {
  const stated = statedSteps(sightings, halves, rules);
  const exchanges = findExchanges(sightings);
  const logged = mergeSightings(
    sightings.filter((s) => s.signal === 'switchover'),
    rules,
  );
  const first = firstActive(stated, sightings, halves, rules);
  if (first === null) return { first, flips: [], steps: stated };
  const flips = statedFlips(stated, halves, first);
  const toggles = [...exchanges, ...logged.map((item) => ({ ...item, file: null }))];
  const all = addToggles(flips, toggles, halves, first, rules);
  const steps = completeSteps(stated, all, halves, first, sightings);
  return { first, flips: all, steps };
}

function statedSteps(
  sightings: readonly Sighting[],
  halves: readonly string[],
  rules: TimelineRules,
): ReadonlyMap<string, readonly StateStep[]> {
  const own = (half: string): readonly Sighting[] =>
    sightings.filter((s) => s.signal === 'role' && s.subject.half === half);
  return new Map(halves.map((half) => [half, toSteps(mergeSightings(own(half), rules), [], null)]));
}

function firstActive(
  stated: ReadonlyMap<string, readonly StateStep[]>,
  sightings: readonly Sighting[],
  halves: readonly string[],
  rules: TimelineRules,
): string | null {
  const firstSteps = halves.flatMap((half) => (stated.get(half) ?? []).map((step) => ({ half, step })));
  const earliest = firstSteps.sort((a, b) => a.step.time - b.step.time)[0];
  if (earliest !== undefined) {
    const { half, step } = earliest;
    // In mid-log a first entry tells of a change; at the begin of a log it states how things are.
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

function statedFlips(
  stated: ReadonlyMap<string, readonly StateStep[]>,
  halves: readonly string[],
  first: string,
): readonly Flip[] {
  const steps = halves
    .flatMap((half) => (stated.get(half) ?? []).map((step) => ({ half, step })))
    .sort((a, b) => a.step.time - b.step.time || a.step.earliest - b.step.earliest);
  const flips: Flip[] = [];
  let active = first;
  for (const { half, step } of steps) {
    const next = step.value === 'active' ? half : half === active ? otherHalf(halves, half) : active;
    if (next === active) continue;
    active = next;
    const { time, earliest, resolution, sources } = step;
    flips.push({ time, earliest, resolution, toHalf: next, sources, file: null });
  }
  return flips;
}

function addToggles(
  stated: readonly Flip[],
  toggles: readonly (Stamp & Pick<Exchange, 'sources'> & { readonly file: string | null })[],
  halves: readonly string[],
  first: string,
  rules: TimelineRules,
): readonly Flip[] {
  const flips = [...stated];
  for (const toggle of [...toggles].sort((a, b) => a.time - b.time)) {
    const near = flips.some(
      (f) => toggle.time + rules.lagMs > f.earliest && f.time + rules.lagMs > toggle.earliest,
    );
    if (near) continue;
    const before = activeHalf({ first, flips, steps: new Map() }, toggle.time);
    if (before === null) continue;
    const { time, earliest, resolution, sources, file } = toggle;
    flips.push({ time, earliest, resolution, toHalf: otherHalf(halves, before), sources, file });
    flips.sort((a, b) => a.time - b.time);
  }
  return flips;
}

/** Adds the steps that the logs leave unsaid: the half that gives the active role up, or takes it, with the flip. */
function completeSteps(
  stated: ReadonlyMap<string, readonly StateStep[]>,
  flips: readonly Flip[],
  halves: readonly string[],
  first: string,
  sightings: readonly Sighting[],
): ReadonlyMap<string, readonly StateStep[]> {
  const steps = new Map(halves.map((half) => [half, [...(stated.get(half) ?? [])]]));
  const byRole = sightings.find((s) => s.subject.role !== null);
  if (byRole !== undefined && [...steps.values()].every((list) => list.length === 0)) {
    for (const half of halves)
      steps.get(half)?.push(initialStep(byRole, half === first ? 'active' : 'standby'));
  }
  for (const [index, flip] of flips.entries()) {
    const next = flips[index + 1]?.time ?? Number.POSITIVE_INFINITY;
    for (const half of halves) {
      const value = half === flip.toHalf ? 'active' : 'standby';
      const own = steps.get(half) ?? [];
      if (saysItself(own, flip, next) || isPolled(sightings, half, flip)) continue;
      const before = value === 'active' ? 'standby' : 'active';
      own.splice(countUntil(own, flip.time), 0, derivedStep(flip, value, before));
    }
  }
  return steps;
}

/** A half's own log says what became of its role before the roles pass again, so nothing is added for it. */
function saysItself(own: readonly StateStep[], flip: Flip, next: number): boolean {
  return (own[countUntil(own, flip.earliest, 'before')]?.time ?? next) < next;
}

/** A poll goes on reading this half's role after the flip: what it does not show did not happen. */
function isPolled(sightings: readonly Sighting[], half: string, flip: Flip): boolean {
  return sightings.some(
    (s) =>
      s.kind === 'reading' &&
      s.signal === 'role' &&
      s.subject.half === half &&
      s.time < flip.time &&
      s.streamEnd > flip.time + s.spacing,
  );
}

function initialStep({ time, sources, resolution }: Sighting, value: string): StateStep {
  return { time, earliest: time, resolution, value, before: null, initial: true, sources };
}

function derivedStep(
  { time, earliest, resolution, sources }: Flip,
  value: string,
  before: string,
): StateStep {
  return { time, earliest, resolution, value, before, initial: false, sources };
}
