import { type Rayleigh, rayleigh } from '../statistics/rayleigh.ts';
import { type Regularity, spacingRegularity } from '../statistics/spacing-regularity.ts';
import type { Bout } from '../timeline/bouts.ts';
import { total } from '../timeline/coverage.ts';
import { linesOfAll } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { dayShare } from '../timeline/site-clock.ts';
import {
  type ChanceQuestion,
  type Finding,
  type NonEmpty,
  sayDuration,
  type TimelineEvent,
} from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';
import { askIf } from './ask-if.ts';
import type { Limits, RhythmLimits } from './limits.ts';

const dayMs = 86_400_000;
const dayMinutes = 1440;
/** Asked of the bouts: whether they keep a rhythm, and an hour of the day. */
const questionsAsked = 2;

/** Whether the bouts of losses keep a rhythm, or come at an hour of the day: something with a clock brings them. */
export const rhythm: Analyzer = {
  meta: {
    id: 'rhythm',
    question: 'Do the losses keep a rhythm, or gather at an hour of the day?',
    needs: ['partner-ready'],
    findings: ['rhythm'],
  },
  analyze(facts, limits) {
    const answers = [inSpacings(facts, limits), atAnHour(facts, limits)];
    const questions = answers.filter((a) => a !== null);
    return {
      checked: questions.length,
      notObserved: questionsAsked - questions.length,
      findings: [],
      questions,
    };
  },
};

/**
 * Whether the spacings of bouts are more even than chance makes them; `null` if there is too little to judge by. After a bout
 * the next cannot begin for `boutMs`, else it would be the same: only what lies beyond that is left to chance.
 */
function inSpacings({ timeline, bouts }: PairFacts, all: Limits): ChanceQuestion | null {
  const { rhythm: limits, rules } = all;
  const spacings = bouts.flatMap((bout, index) => {
    const before = bouts[index - 1];
    const last = before?.losses.at(-1);
    if (before === undefined || last === undefined) return [];
    // What an unobserved span hides may have parted this spacing in two.
    const hidden = timeline.unobserved.some((u) => u.from < bout.time && u.to > before.time);
    return hidden ? [] : [{ whole: bout.time - before.time, free: bout.time - last.time - rules.boutMs }];
  });
  if (spacings.length < limits.leastCount) return null;
  const free = spacingRegularity(spacings.map((s) => s.free / 1000));
  const whole = spacingRegularity(spacings.map((s) => s.whole / 1000));
  if (widestOf(bouts) / 1000 > limits.boundsShare * free.mean) return null;
  return askIf(whole.variation <= limits.variation ? free.p : 1, all, () =>
    findingOf(timeline.pair, bouts, spacingWords(spacings.length, whole)),
  );
}

/** How far apart the bounds of the first loss of a bout are at most, in milliseconds. */
function widestOf(bouts: readonly Bout[]): number {
  return Math.max(
    0,
    ...bouts.flatMap(({ losses: [first] }) =>
      first === undefined ? [] : [first.time - first.earliest + first.resolution],
    ),
  );
}

function spacingWords(spacings: number, { mean, variation }: Regularity): Said {
  const percent = Math.round(variation * 100);
  const scatter = percent === 0 ? 'by less than 1 %' : `by ${percent} %`;
  return {
    statement: `Losses come at regular intervals: a bout every ${sayDuration(mean)}, with ${spacings} spacings that vary ${scatter} (`,
    figures: { spacings, meanSeconds: mean, variation },
  };
}

/** Whether the bouts begin about one hour of the site's day; `null` if there is too little to judge by. */
function atAnHour({ timeline, bouts }: PairFacts, all: Limits): ChanceQuestion | null {
  const limits = all.rhythm;
  const unseen = total(timeline.unobserved) / (timeline.to - timeline.from);
  const isSeen = total(timeline.observed) >= limits.leastDays * dayMs && unseen <= limits.unobservedShare;
  if (!isSeen || bouts.length < limits.leastCount || widestOf(bouts) > limits.boundsShare * dayMs)
    return null;
  const clocks = bouts.map((b) => dayShare(b.time, timeline.zone ?? 'UTC'));
  const gathering = rayleigh(clocks);
  return askIf(gathering.p, all, () =>
    findingOf(timeline.pair, bouts, hourWords(clocks, timeline.zone, gathering, limits)),
  );
}

/** The hours about the middle in which most bouts lie: the narrowest span that is said and holds the share. */
function hourWords(
  clocks: readonly number[],
  zone: string | null,
  { direction, length }: Rayleigh,
  { hoursSaid, shareSaid }: RhythmLimits,
): Said {
  const within = (hours: number): number =>
    clocks.filter((c) => Math.abs(((c - direction + 1.5) % 1) - 0.5) <= hours / 48).length;
  const hours = hoursSaid.find((h) => within(h) >= shareSaid * clocks.length) ?? 24;
  const count = within(hours);
  const [from, about, to] = [-hours / 48, 0, hours / 48].map((shift) => sayClock(direction + shift));
  const clock = zone === null ? 'UTC' : `site time (${zone})`;
  return {
    statement: `Losses cluster around ${about} ${clock}: ${count} of ${clocks.length} bouts between ${from} and ${to} (mean vector ${length.toFixed(2)}, `,
    figures: {
      bouts: clocks.length,
      within: count,
      hours,
      clock: about ?? '',
      meanVector: length,
    },
  };
}

/** The clock of a share of a day, to the minute. */
function sayClock(share: number): string {
  const minutes = (Math.round(share * dayMinutes) + dayMinutes) % dayMinutes;
  return [Math.floor(minutes / 60), minutes % 60].map((n) => String(n).padStart(2, '0')).join(':');
}

type Said = Pick<Finding, 'statement' | 'figures'>;

function findingOf(pair: string, bouts: readonly Bout[], said: Said): Finding {
  const [first, ...rest] = bouts.flatMap(({ losses }) => losses.slice(0, 1));
  if (first === undefined) throw new RangeError('A rhythm without a bout.');
  const events: NonEmpty<TimelineEvent> = [first, ...rest];
  const to = rest.at(-1)?.time ?? first.time;
  const frame = { id: 'rhythm', severity: 'warning', pair, half: null, from: first.time, to } as const;
  return { ...frame, ...said, evidence: linesOfAll(events) };
}
