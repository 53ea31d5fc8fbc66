import type { Staff, StaffState } from '../vocabulary.ts';
import { differencesOf } from './differences.ts';
import type { PairFacts } from './facts.ts';
import { flappingSpells } from './flapping.ts';
import type { TimelineRules } from './rules.ts';

/** Every stretch in which the pair was not as it should be, or not observed; `bringUps` as they stand on the staff. */
export function staffStatesOf(
  facts: PairFacts,
  bringUps: Staff['bringUps'],
  rules: TimelineRules,
): readonly StaffState[] {
  const { timeline } = facts;
  const state = (kind: StaffState['kind'], from: number, to: number): StaffState => ({
    kind,
    half: null,
    from,
    to,
    seconds: (to - from) / 1000,
    count: 1,
    losses: 0,
    goesOn: to >= timeline.to,
  });
  return [
    ...timeline.unobserved.map((u) => ({ ...state('unobserved', u.from, u.to), goesOn: false })),
    // Shorter ones are the moment that a switchover takes.
    ...facts.conflicts
      .filter((c) => c.low > rules.conflictSeconds)
      .map((c) => ({ ...state(c.kind, c.from, c.to), goesOn: c.goesOn })),
    ...facts.exposed.map((e) => state('no-ready-partner', e.from, e.to)),
    ...bringUps.filter((b) => b.late).map((b) => ({ ...state('past-limit', b.flag, b.to), half: b.half })),
    ...flapping(facts, rules).map((s) => ({
      ...state('flapping', s.from, s.to),
      losses: s.losses,
      goesOn: false,
    })),
    ...(['firmware', 'model'] as const).flatMap((signal) =>
      differencesOf(facts, signal)
        .filter((d) => !d.isExpected)
        .map((d) => state(signal === 'model' ? 'models-differ' : 'firmware-differs', d.from, d.to)),
    ),
  ];
}

/** From the first to the last loss of each spell. */
function flapping(
  { losses, timeline }: PairFacts,
  rules: TimelineRules,
): readonly { readonly from: number; readonly to: number; readonly losses: number }[] {
  const counted = losses.filter((l) => l.kind === 'counted').map((l) => l.event);
  return flappingSpells(counted, timeline.to, rules.flapping).map(({ events }) => ({
    from: events[0].time,
    to: events.at(-1)?.time ?? events[0].time,
    losses: events.length,
  }));
}
