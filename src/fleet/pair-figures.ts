import { linesOf } from '../timeline/evidence.ts';
import { availabilityOf } from '../timeline/exposure.ts';
import type { PairFacts } from '../timeline/facts.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import { track } from '../timeline/tracks.ts';
import type {
  ComparedPair,
  IdentityFigures,
  LossFigures,
  PairAnswer,
  PairFigures,
  PairTimeline,
} from '../vocabulary.ts';
import { fitnessFigures } from './fitness.ts';
import { monthOf, nextMonth } from './months.ts';

/** What pairs are compared by but for their bring-ups and fitness. */
export type LossHistory = Omit<ComparedPair, 'bringUps' | 'fitness' | 'availability'>;

/** The figures of one pair; `answers` are those of all analyzers on it. */
export function pairFigures(
  facts: PairFacts,
  answers: readonly PairAnswer[],
  rules: TimelineRules,
): PairFigures {
  return {
    ...lossHistory(facts),
    availability: availabilityOf(facts.timeline),
    bringUps: facts.bringUps,
    fitness: fitnessFigures(facts, rules),
    answers: answers
      .filter(({ findings, questions }) => findings.length + questions.length > 0)
      .map(({ analyzer, findings, questions }) => ({ analyzer, findings, questions })),
  };
}

/** When a pair was observed, what it lost, and what ran on it. */
export function lossHistory(facts: PairFacts): LossHistory {
  const { timeline, bouts } = facts;
  const { pair, site, from, to, observed } = timeline;
  return {
    ...{ pair, site, from, to, observed },
    losses: lossFigures(facts),
    bouts: bouts.map(({ time }) => ({ time })),
    identities: identitiesOf(timeline),
    activeMonths: activeMonths(timeline),
  };
}

/** The losses of a pair with their lines, in the order of time. */
export function lossFigures({ losses }: PairFacts): readonly LossFigures[] {
  return losses.map(({ kind, event }) => {
    const { time, earliest } = event;
    return { kind, time, earliest, lines: linesOf(event) };
  });
}

/** The first of months alone needs a calendar, not every event. */
function activeMonths({ events }: PairTimeline): readonly number[] {
  const months: number[] = [];
  let [from, to] = [0, 0];
  for (const { time } of events) {
    if (time >= from && time < to) continue;
    from = monthOf(time);
    to = nextMonth(from);
    if (!months.includes(from)) months.push(from);
  }
  return months;
}

function identitiesOf(timeline: PairTimeline): readonly IdentityFigures[] {
  return timeline.halves.flatMap((half) =>
    (['firmware', 'model'] as const).map((signal) => ({
      half,
      signal,
      steps: track(timeline, half, signal).map(({ time, value, initial }) => ({ time, value, initial })),
    })),
  );
}
