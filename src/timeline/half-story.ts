import type { Signal, StateSignal } from '../vocabulary.ts';
import type { HalfStory, Sign } from './derived.ts';
import { keyOf } from './groups.ts';
import { type Merged, mergeSightings } from './merge.ts';
import type { RoleEvidence } from './role-steps.ts';
import { otherHalf } from './roles.ts';
import type { TimelineRules } from './rules.ts';
import { byTime, type Sighting } from './sightings.ts';
import { noBreaks, type StateStep, toSteps } from './states.ts';
import type { Resolved } from './subjects.ts';

/** What the derivation needs of one half. */
export function storyOf(
  half: string,
  { sightings, resolved, halves }: Omit<RoleEvidence, 'happened'>,
  grouped: ReadonlyMap<string, readonly Resolved[]>,
  rules: TimelineRules,
): HalfStory {
  const steps = (signal: StateSignal, of: string | null): readonly StateStep[] =>
    toSteps(mergeSightings(grouped.get(keyOf(of, signal)) ?? [], rules), noBreaks);
  const identity = (of: string): readonly StateStep[] => {
    const serial = steps('serial', of);
    return serial.some((s) => s.value !== null) ? serial : steps('model', of);
  };
  const other = otherHalf(halves, half);
  return {
    half,
    identity: identity(half),
    otherIdentity: other === half ? [] : identity(other),
    otherRemovals: other === half ? [] : mergeSightings(grouped.get(keyOf(other, 'removed')) ?? [], rules),
    firmware: steps('firmware', half),
    presence: steps('partner-present', null),
    signs: once(() => signsOf(half, sightings, resolved)),
    logged: logged((signal) => mergeSightings(grouped.get(keyOf(half, signal)) ?? [], rules)),
  };
}

/** What an empty place reports where a poll reads it all the same. */
const ofEmptyPlace: ReadonlySet<string | null> = new Set([null, 'none', 'off', 'down']);

/** Readings that only a module in place gives, in the order of time. */
function signsOf(
  half: string,
  sightings: readonly Sighting[],
  resolved: readonly Resolved[],
): readonly Sign[] {
  const roles = sightings.filter((s) => s.signal === 'role' && s.subject.half === half);
  const others = resolved.filter((s) => s.half === half && ofModule.has(s.signal));
  return [...roles, ...others].filter((s) => s.kind !== 'note' && !ofEmptyPlace.has(s.value)).sort(byTime);
}

const ofModule: ReadonlySet<Signal> = new Set(['serial', 'model', 'firmware', 'light', 'link-a', 'link-b']);

/** Makes a list when it is first asked for: only a module that was replaced asks for all signs. */
function once<T>(make: () => readonly T[]): () => readonly T[] {
  let made: readonly T[] | null = null;
  return () => (made ??= make());
}

/** Merges what was logged of each happening once. */
function logged(merge: (signal: Signal) => readonly Merged[]): (signal: Signal) => readonly Merged[] {
  const known = new Map<Signal, readonly Merged[]>();
  return (signal) => {
    const merged = known.get(signal) ?? merge(signal);
    known.set(signal, merged);
    return merged;
  };
}
