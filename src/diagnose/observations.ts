import { isFailed } from '../timeline/attempts.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { identityAt } from '../timeline/module-changes.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import { standbyAt } from '../timeline/standby.ts';
import { spells } from '../timeline/tracks.ts';
import type { Attempt } from '../vocabulary.ts';

/** One time that a half was ready and held, or failed to become so: what every count of causes is made of. */
export interface Observation {
  readonly facts: PairFacts;
  /** `null` where no line says which half it was. */
  readonly half: string | null;
  readonly serial: string | null;
  readonly ready: boolean;
  /** The span it is judged over, and the instant at which states are read. */
  readonly from: number;
  readonly to: number;
  readonly at: number;
}

/** The observations of one pair: each spell of a ready partner that held, and each failed attempt. */
export function observationsOf(
  facts: PairFacts,
  attempts: readonly Attempt[],
  rules: TimelineRules,
): readonly Observation[] {
  return [...readySpells(facts, rules), ...failures(facts, attempts)].sort((a, b) => a.at - b.at);
}

/** Where only the second module's presence is logged, nothing was ever said to be ready. */
function readySpells(facts: PairFacts, rules: TimelineRules): readonly Observation[] {
  const { timeline, readiness } = facts;
  if (readiness.signal !== 'partner-ready') return [];
  return spells(readiness.steps, 'yes').flatMap(({ start, end }) => {
    const to = end?.earliest ?? timeline.to;
    const at = start.time + rules.holdMs;
    const half = standbyAt(timeline, at);
    if (to < at) return [];
    const serial = half === null ? null : identityAt(timeline, half, at).serial;
    return [{ facts, half, serial, ready: true, from: start.time, to, at }];
  });
}

/**
 * A mere wait after a loss is no attempt. States are read just before the end, which may change them: before the whole of the time
 * in which a poll leaves it. The log's end changes none.
 */
function failures(facts: PairFacts, attempts: readonly Attempt[]): readonly Observation[] {
  return attempts
    .filter((a) => isFailed(a) && a.cause !== 'loss')
    .map(({ half, serial, start, end, outcome }) => {
      const isCut = outcome === 'overdue' && end.time >= facts.timeline.to;
      const at = isCut ? end.time : Math.max(start.time, Math.min(end.earliest, end.time - 1));
      return { facts, half, serial, ready: false, from: start.time, to: end.time, at };
    });
}
