import { type Damping, decay, figureOfMerit, secondsToReuse } from '../statistics/figure-of-merit.ts';
import type { Interval, NonEmpty, TimelineEvent } from '../vocabulary.ts';
import type { TimelineRules } from './rules.ts';

/** A spell of flapping: from the change that passed the cut-off to where the penalty has decayed. */
export interface FlappingSpell extends Interval {
  /** The changes that built the penalty up, from the first that still weighed in. */
  readonly events: NonEmpty<TimelineEvent>;
  readonly peak: number;
}

/**
 * Spells in which changes follow each other so fast that their penalty passes the cut-off. `events` in the order of
 * time; a spell ends where the penalty falls below the re-use value, or with the log. Source: RFC 2439, section 4.3.
 */
export function flappingSpells(
  events: readonly TimelineEvent[],
  logEnd: number,
  rules: TimelineRules['flapping'],
): readonly FlappingSpell[] {
  const damping: Damping = { halfLifeSeconds: rules.halfLifeSeconds, ceiling: Number.POSITIVE_INFINITY };
  const figures = figureOfMerit(
    events.map((e) => e.time / 1000),
    damping,
  );
  const spells: FlappingSpell[] = [];
  let open: { first: TimelineEvent; members: TimelineEvent[]; from: number | null; peak: number } | null =
    null;
  let last = 0;
  for (const [index, event] of events.entries()) {
    const figure = figures[index] ?? 0;
    const left = index === 0 ? 0 : decay(last, (event.time - (events[index - 1]?.time ?? 0)) / 1000, damping);
    if (open !== null && left < rules.reuse) {
      spells.push(...closed(open, last, logEnd, damping, rules));
      open = null;
    }
    open = open ?? { first: event, members: [], from: null, peak: 0 };
    open.members.push(event);
    open.peak = Math.max(open.peak, figure);
    if (figure > rules.cutOff) open.from = open.from ?? event.time;
    last = figure;
  }
  return open === null ? spells : [...spells, ...closed(open, last, logEnd, damping, rules)];
}

function closed(
  open: { first: TimelineEvent; members: readonly TimelineEvent[]; from: number | null; peak: number },
  figure: number,
  logEnd: number,
  damping: Damping,
  rules: TimelineRules['flapping'],
): readonly FlappingSpell[] {
  if (open.from === null) return [];
  const final = open.members.at(-1) ?? open.first;
  const reuse = final.time + Math.floor(secondsToReuse(figure, rules.reuse, damping) * 1000);
  const to = Math.min(logEnd, reuse);
  return [{ from: open.from, to, events: [open.first, ...open.members.slice(1)], peak: open.peak }];
}
