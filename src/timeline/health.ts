import type { Instant, NonEmpty, SourceLine, Staff } from '../vocabulary.ts';
import type { PairFacts } from './facts.ts';
import { flappingSpells } from './flapping.ts';
import { identityAt } from './module-changes.ts';
import { endLines, linesOf, linesOfAll } from './readiness.ts';
import type { TimelineRules } from './rules.ts';
import { staffOf } from './staff.ts';
import { stepAt, track, valueAt } from './tracks.ts';

/** What a half holds where the log ends; `null` where it was never reported. */
export interface HalfNow {
  readonly half: string;
  readonly role: string | null;
  readonly model: string | null;
  readonly firmware: string | null;
}

/** How a pair stands where its log ends, and its staff from begin to end. */
export interface PairHealth {
  readonly pair: string;
  readonly site: string | null;
  readonly state: 'ready' | 'flapping' | 'not-ready' | 'unknown';
  /** When the state began; `null` if it was so when the log began, or is not known. */
  readonly since: Instant | null;
  /** Losses of the spell of flapping that goes on; 0 if there is none. */
  readonly losses: number;
  readonly from: number;
  /** The last instant that was read of it. */
  readonly to: number;
  readonly halves: readonly HalfNow[];
  readonly staff: Staff;
  readonly evidence: NonEmpty<SourceLine>;
}

/** How a pair stands where its log ends. A spell of flapping that has not died down by then goes before readiness. */
export function healthOf(facts: PairFacts, rules: TimelineRules): PairHealth {
  const { timeline } = facts;
  const { pair, site, from, to } = timeline;
  return {
    pair,
    site,
    from,
    to,
    ...stateOf(facts, rules),
    halves: timeline.halves.map((half) => {
      const { model, firmware } = identityAt(timeline, half, to);
      return { half, role: valueAt(track(timeline, half, 'role'), to), model, firmware };
    }),
    staff: staffOf(facts, from, to, rules.lightLimitSeconds),
  };
}

function stateOf(
  { timeline, losses, readiness }: PairFacts,
  rules: TimelineRules,
): Pick<PairHealth, 'state' | 'since' | 'losses' | 'evidence'> {
  const counted = losses.filter((l) => l.kind === 'counted').map((l) => l.event);
  const spell = flappingSpells(counted, timeline.to, rules.flapping).at(-1);
  if (spell !== undefined && spell.to === timeline.to) {
    const [first] = spell.events;
    const since = { time: first.time, earliest: first.earliest };
    return { state: 'flapping', since, losses: spell.events.length, evidence: linesOfAll(spell.events) };
  }
  const last = stepAt(readiness.steps, timeline.to);
  if (last === undefined) return { state: 'unknown', since: null, losses: 0, evidence: endLines(timeline) };
  // A value that is only restated goes on: the spell began with the first step that said so.
  const before = readiness.steps.findLastIndex((s) => s.time <= last.time && s.value !== last.value);
  const start = readiness.steps[before + 1] ?? last;
  return {
    state: last.value === 'yes' ? 'ready' : 'not-ready',
    since: start.initial ? null : { time: start.time, earliest: start.earliest },
    losses: 0,
    evidence: linesOf(start),
  };
}
