import type { Happening, NonEmpty, Source } from '../vocabulary.ts';
import type { Stamp } from './durations.ts';
import type { Merged } from './merge.ts';
import type { TimelineRules } from './rules.ts';
import type { StateStep } from './states.ts';

/** A happening that no log states, read off the states that show it; its sources are theirs. */
export interface Derived extends Stamp {
  readonly half: string;
  readonly signal: Happening;
  readonly sources: NonEmpty<Source>;
}

/** What the derivation needs of one half: its identity as reported, every sign of a module, and what was logged of it. */
export interface HalfStory {
  readonly half: string;
  readonly identity: readonly StateStep[];
  readonly firmware: readonly StateStep[];
  readonly presence: readonly StateStep[];
  /** The identity of the other half: an absence in which it changes too may be its own. */
  readonly otherIdentity: readonly StateStep[];
  /** The logged removals of the other half: an absence that begins with one is its own. */
  readonly otherRemovals: readonly Merged[];
  /** When something was read that only a module in place reports, in the order of time. */
  signs(): readonly Sign[];
  logged(signal: Happening): readonly Merged[];
}

/** A reading that only a module in place gives. */
export interface Sign extends Stamp {
  readonly sources: NonEmpty<Source>;
}

/**
 * How long after a poll showed it a log may still tell of the same: clocks that differ by less than the spacing of a poll
 * cannot be told to differ, and what was read once did not happen twice within it.
 */
export function lagOf({ kind, time, earliest }: StateStep, rules: TimelineRules): number {
  return kind === 'reading' ? Math.max(rules.lagMs, time - earliest) : rules.lagMs;
}

/** A happening that is derived, unless a log tells of it since an instant up to so long after its own. */
export function unlessLogged(
  story: HalfStory,
  signal: Happening,
  at: Stamp & Pick<Derived, 'sources'>,
  since: number,
  lagMs: number,
): readonly Derived[] {
  // What was logged just after the old identity was first read still tells of that one's arrival.
  const from = since + lagMs < at.earliest ? since + lagMs : since;
  const told = story
    .logged(signal)
    .some((m) => m.kind !== 'note' && m.time > from && m.earliest <= at.time + lagMs);
  const { time, earliest, resolution, sources } = at;
  return told ? [] : [{ half: story.half, signal, time, earliest, resolution, sources }];
}
