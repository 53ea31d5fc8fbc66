import { type Rayleigh, rayleigh } from '../statistics/rayleigh.ts';
import { type Regularity, spacingRegularity } from '../statistics/spacing-regularity.ts';
import { total } from '../timeline/coverage.ts';
import { linesOfAll } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { type Finding, type NonEmpty, sayChance, sayDuration, type TimelineEvent } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';
import type { RhythmLimits } from './limits.ts';

const dayMs = 86_400_000;
/** The two questions asked of the losses share the significance. */
const questions = 2;

/** Whether the losses keep a rhythm, or come at an hour of the day: something with a clock brings them. */
export const rhythm: Analyzer = {
  meta: {
    id: 'rhythm',
    question: 'Do the losses keep a rhythm, or gather at an hour of the day?',
    needs: ['partner-ready'],
    findings: ['rhythm'],
  },
  analyze(facts, limits) {
    const losses = facts.losses.filter((l) => l.kind === 'counted').map((l) => l.event);
    const answers = [
      inSpacings(facts, losses, limits.rhythm),
      atAnHour(facts, limits.rhythm, limits.rules.boutMs),
    ];
    const judged = answers.filter((a) => a !== null);
    return { checked: judged.length, notObserved: questions - judged.length, findings: judged.flat() };
  },
};

/** No finding, or one; `null` if there is too little to judge by. */
type Answered = readonly Finding[] | null;

function inSpacings(
  { timeline }: PairFacts,
  losses: readonly TimelineEvent[],
  limits: RhythmLimits,
): Answered {
  const spacings = losses.flatMap((loss, index) => {
    const before = losses[index - 1];
    if (before === undefined) return [];
    // What an unobserved span hides may have parted this spacing in two.
    const hidden = timeline.unobserved.some((u) => u.from < loss.time && u.to > before.time);
    return hidden ? [] : [(loss.time - before.time) / 1000];
  });
  if (spacings.length < limits.leastCount) return null;
  const regularity = spacingRegularity(spacings);
  const widest = Math.max(...losses.map((l) => l.time - l.earliest + l.resolution)) / 1000;
  if (widest > limits.boundsShare * regularity.mean) return null;
  const isEven = regularity.p <= limits.significance / questions && regularity.variation <= limits.variation;
  return isEven ? findingOf(timeline.pair, losses, spacingWords(spacings.length, regularity)) : [];
}

function spacingWords(spacings: number, { mean, variation, p }: Regularity): Said {
  const percent = Math.round(variation * 100);
  return {
    statement: `The losses keep a rhythm: one every ${sayDuration(mean)}, ${spacings} spacings that vary by ${percent} % of it, where chance makes them vary by about 100 % (${sayChance(p)}).`,
    figures: { spacings, meanSeconds: mean, variation, p },
  };
}

function atAnHour({ timeline, bouts: all }: PairFacts, limits: RhythmLimits, boutMs: number): Answered {
  const bouts = all.flatMap(({ losses }) => losses.slice(0, 1));
  const unseen = total(timeline.unobserved) / (timeline.to - timeline.from);
  const isSeen = total(timeline.observed) >= limits.leastDays * dayMs && unseen <= limits.unobservedShare;
  const widest = Math.max(0, ...bouts.map((b) => b.time - b.earliest));
  if (!isSeen || bouts.length < limits.leastCount || widest > limits.boundsShare * dayMs) return null;
  const gathering = rayleigh(bouts.map((b) => (b.time % dayMs) / dayMs));
  const isGathered = gathering.p <= limits.significance / questions;
  return isGathered ? findingOf(timeline.pair, bouts, hourWords(bouts.length, boutMs, gathering)) : [];
}

function hourWords(bouts: number, boutMs: number, { direction, length, p }: Rayleigh): Said {
  const minutes = Math.round(direction * 1440) % 1440;
  const clock = [Math.floor(minutes / 60), minutes % 60].map((n) => String(n).padStart(2, '0')).join(':');
  return {
    statement: `The losses gather at an hour of the day: ${bouts} bouts of them, over ${sayDuration(boutMs / 1000)} apart, about ${clock} UTC (mean vector ${length.toFixed(2)} of 1, ${sayChance(p)}).`,
    figures: { bouts, clock, meanVector: length, p },
  };
}

type Said = Pick<Finding, 'statement' | 'figures'>;

function findingOf(pair: string, losses: readonly TimelineEvent[], said: Said): readonly Finding[] {
  const [first, ...rest] = losses;
  if (first === undefined) return [];
  const events: NonEmpty<TimelineEvent> = [first, ...rest];
  const to = rest.at(-1)?.time ?? first.time;
  const frame = { id: 'rhythm', severity: 'warning', pair, half: null, from: first.time, to } as const;
  return [{ ...frame, ...said, evidence: linesOfAll(events) }];
}
