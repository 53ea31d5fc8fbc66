import { attemptsOf, isFailed } from '../timeline/attempts.ts';
import { endLines, linesOf, uniqueLines } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { flappingSpells } from '../timeline/flapping.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import { standbyAt } from '../timeline/standby.ts';
import { spells, track, valueAt } from '../timeline/tracks.ts';
import type { Attempt, TimelineEvent } from '../vocabulary.ts';
import type { Trouble } from './cause.ts';
import type { DiagnoseLimits } from './limits.ts';
import { type Observation, observationsOf } from './observations.ts';
import { type Standing, standingOf } from './standing.ts';

/** What all pairs of the files give to compare with, read once. */
export interface Fleet {
  readonly facts: readonly PairFacts[];
  readonly attempts: readonly Attempt[];
  readonly observations: readonly Observation[];
}

export function fleetOf(facts: readonly PairFacts[], rules: TimelineRules): Fleet {
  const pairs = facts.map((f) => ({ facts: f, attempts: attemptsOf(f.timeline, f.bringUps, rules) }));
  return {
    facts,
    attempts: pairs.flatMap((p) => p.attempts),
    observations: pairs.flatMap((p) => observationsOf(p.facts, p.attempts, rules)),
  };
}

/** What is wrong with a pair at the end of its log; `null` if it has a ready partner that holds. */
export function troubleOf(
  facts: PairFacts,
  fleet: Fleet,
  limits: DiagnoseLimits,
  rules: TimelineRules,
): Trouble | null {
  const begun = beginOf(facts, rules);
  if (begun === null) return null;
  const { timeline } = facts;
  const from = begun.event?.time ?? timeline.from;
  // What a poll read only later may have ended an attempt before that reading.
  const earliest = begun.event?.earliest ?? from;
  const own = fleet.attempts.filter(
    (a) => a.pair === timeline.pair && (a.end.time > earliest || a.end.time >= from),
  );
  const half = standbyAt(timeline, timeline.to) ?? own.at(-1)?.half ?? null;
  const isOfHalf = (a: Attempt): boolean => half === null || a.half === null || a.half === half;
  const attempts = own.filter(isOfHalf);
  const begin = episodeFrom(facts, from, limits);
  const lines = endLines(timeline);
  return {
    facts,
    kind: begun.kind,
    fleet: fleet.facts,
    half,
    from,
    to: timeline.to,
    evidence: begun.event === null ? lines : uniqueLines([...linesOf(begun.event), ...lines.slice(-1)]),
    attempts,
    failed: attempts.filter((a) => isFailed(a)),
    episode: {
      from: begin,
      failed: fleet.attempts.filter(
        (a) =>
          a.pair === timeline.pair && isFailed(a) && isOfHalf(a) && (a.end.time >= begin || own.includes(a)),
      ),
    },
    allAttempts: fleet.attempts,
    observations: fleet.observations,
    limits,
    rules,
  };
}

/** The first of the losses that led to the trouble: from each to the next the partner was ready for no longer than an episode allows. */
function episodeFrom({ losses, readiness }: PairFacts, from: number, { episodeMs }: DiagnoseLimits): number {
  const unplanned = new Set(losses.filter((l) => l.kind !== 'planned').map((l) => l.event));
  const before = spells(readiness.steps, 'no').filter((s) => unplanned.has(s.start) && s.start.time < from);
  return before.reduceRight(
    (begin, { start, end }) => (begin - (end ?? start).time <= episodeMs ? start.time : begin),
    from,
  );
}

/** What is wrong with a pair where its log ends, and the event that began it. */
export interface Begun {
  readonly kind: Trouble['kind'];
  /** `null`: from the first line on. */
  readonly event: TimelineEvent | null;
}

/** What is wrong with a pair where its log ends; `null` if it has a ready partner that holds. */
export function beginOf(facts: PairFacts, rules: TimelineRules): Begun | null {
  const standing = standingOf(facts);
  const flapping = flappingNow(facts, rules);
  const down = standing.value === 'no' ? standing.since : notYetHeld(facts, standing, rules);
  // The spell of flapping that a loss belongs to began before it.
  if (down !== null) return { kind: 'not-ready', event: flapping ?? down };
  if (flapping !== null) return { kind: 'flapping', event: flapping };
  const late = lateLight(facts);
  if (late !== null) return { kind: 'late-light', event: late };
  const again = lightAgain(facts, standing, rules);
  if (again !== null) return { kind: 'light-again', event: again };
  const isKnown = standing.signal === 'partner-ready' && standing.endedBy === null;
  return isKnown ? null : { kind: 'unknown', event: null };
}

/** The loss before a ready partner that has not held yet; a second module that is seen again is only seen. */
function notYetHeld(
  { readiness, timeline }: PairFacts,
  { signal }: Standing,
  { holdMs }: TimelineRules,
): TimelineEvent | null {
  const down = spells(readiness.steps, 'no').at(-1);
  const isShort = down?.end != null && timeline.to - down.end.time < holdMs;
  return signal === 'partner-ready' && isShort ? down.start : null;
}

/** The first loss of a spell of flapping that is not over; `null` without one. */
function flappingNow({ losses, timeline }: PairFacts, rules: TimelineRules): TimelineEvent | null {
  const counted = losses.filter((l) => l.kind === 'counted').map((l) => l.event);
  const last = flappingSpells(counted, timeline.to, rules.flapping).at(-1);
  return last !== undefined && last.to >= timeline.to ? last.events[0] : null;
}

/** The start of the last bring-up, if its light was not steady in time and still is not; else `null`. */
function lateLight({ bringUps, timeline }: PairFacts): TimelineEvent | null {
  const last = bringUps.at(-1);
  if (last === undefined || last.light.outcome !== 'exceeded') return null;
  const isSteady = valueAt(track(timeline, last.half, 'light'), timeline.to) === 'steady';
  const isActive = valueAt(track(timeline, last.half, 'role'), timeline.to) === 'active';
  if (isSteady || isActive) return null;
  return timeline.events.find((e) => e.half === last.half && e.time === last.start.time) ?? null;
}

/**
 * The change of the standby's light from steady to flashing, where it flashes to the end: once the partner was ready, or for
 * longer than the light may take. Else `null`. Source: design.md, section 5, `nothing-at-fault`.
 */
function lightAgain(
  { timeline }: PairFacts,
  { since }: Standing,
  { lightLimitSeconds }: TimelineRules,
): TimelineEvent | null {
  const [before, flashing] = track(timeline, standbyAt(timeline, timeline.to), 'light').slice(-2);
  if (since === null) return null;
  if (before?.value !== 'steady' || flashing?.value !== 'flashing') return null;
  const isLong = timeline.to - flashing.time > lightLimitSeconds * 1000;
  return flashing.earliest >= since.time || isLong ? flashing : null;
}
