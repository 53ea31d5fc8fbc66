import { linesOfAll } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { flappingSpells } from '../timeline/flapping.ts';
import { keyOf } from '../timeline/groups.ts';
import { kindsOf } from '../timeline/losses.ts';
import { spanEnds } from '../timeline/span-ends.ts';
import { track } from '../timeline/tracks.ts';
import { sayDuration, type TimelineEvent } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';
import type { Limits } from './limits.ts';

/** Halves that lose the active role to each other, or to none, again and again by themselves. */
export const roleFlapping: Analyzer = {
  meta: {
    id: 'role-flapping',
    question: 'Did the halves lose the active role again and again?',
    needs: ['role'],
    findings: ['role-flapping'],
  },
  analyze(facts, limits) {
    const { timeline } = facts;
    const losses = roleLosses(timeline.events);
    const counted = losses.filter(isCountedIn(facts, limits));
    return {
      checked: losses.length,
      notObserved: 0,
      findings: flappingSpells(counted, timeline.to, limits.rules.flapping).map((spell) => {
        const { events, from, to, peak } = spell;
        const seconds = ((events.at(-1)?.time ?? from) - events[0].time) / 1000;
        return {
          id: 'role-flapping',
          severity: 'warning',
          pair: timeline.pair,
          half: null,
          from,
          to,
          statement: `The active role is flapping: it was lost ${events.length} times in ${sayDuration(seconds)} without a command.`,
          figures: { losses: events.length, seconds, penalty: Math.round(peak * 1000) / 1000 },
          evidence: linesOfAll(events),
        };
      }),
    };
  },
};

function roleLosses(events: readonly TimelineEvent[]): readonly TimelineEvent[] {
  return events.filter((e) => e.signal === 'role' && e.before === 'active' && e.value !== 'active');
}

/**
 * A person's work is no flapping: neither what was commanded, nor what a removal, reflash or restart of that half took
 * away. Where no input ever logs a command, switchovers close to planned work are taken for a part of it.
 */
function isCountedIn(facts: PairFacts, { rules, workMs }: Limits): (event: TimelineEvent) => boolean {
  const { timeline, plannedWork, switchovers } = facts;
  const kinds = new Map(
    timeline.halves.map((half) => [
      half,
      kindsOf(
        plannedWork.filter((work) => work.half === half),
        track(timeline, half, 'restart'),
        rules,
      ),
    ]),
  );
  const switchoverAt = new Map(switchovers.map((s) => [keyOf(s.fromHalf, String(s.at.time)), s]));
  const workUntil = spanEnds(plannedWork.map(({ from, to }) => ({ from: from - workMs, to: to + workMs })));
  return (event) => {
    const kind = event.half === null ? undefined : kinds.get(event.half)?.(event);
    if (kind !== undefined && kind !== 'counted') return false;
    const switchover = switchoverAt.get(keyOf(event.half, String(event.time)));
    if (switchover === undefined) return true;
    if (switchover.commanded !== null) return !switchover.commanded;
    return event.earliest > workUntil(event.time);
  };
}
