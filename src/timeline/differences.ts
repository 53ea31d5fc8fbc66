import type { Interval, NonEmpty, TimelineEvent } from '../vocabulary.ts';
import type { PairFacts } from './facts.ts';
import { track, valueAt } from './tracks.ts';

/** A span in which the two halves reported different models or firmware. */
export interface Difference extends Interval {
  readonly signal: 'firmware' | 'model';
  /** It went on when the log ended. */
  readonly open: boolean;
  /** A difference while a swap is under way is expected, unless it lasts to the end. */
  readonly isExpected: boolean;
  readonly values: readonly string[];
  readonly events: NonEmpty<TimelineEvent>;
}

/** A swap that began no longer than this after the halves came to differ explains it. Chosen here: a day. */
const ofSwapMs = 86_400_000;

/** Where the halves reported different values of a signal, in the order of time. */
export function differencesOf(facts: PairFacts, signal: Difference['signal']): readonly Difference[] {
  const { timeline } = facts;
  const tracks = timeline.halves.map((half) => track(timeline, half, signal));
  const moments = tracks.flat().sort((a, b) => a.time - b.time);
  const found: Omit<Difference, 'isExpected'>[] = [];
  let open: { from: TimelineEvent; values: readonly string[] } | null = null;
  for (const [index, moment] of moments.entries()) {
    if (moments[index + 1]?.time === moment.time) continue;
    const values = tracks.map((steps) => valueAt(steps, moment.time)).filter((value) => value !== null);
    const differs = values.length > 1 && new Set(values).size > 1;
    if (differs && open === null) open = { from: moment, values };
    if (differs || open === null) continue;
    const events: NonEmpty<TimelineEvent> = [open.from, moment];
    found.push({ signal, from: open.from.time, to: moment.time, open: false, values: open.values, events });
    open = null;
  }
  if (open !== null)
    found.push({
      signal,
      from: open.from.time,
      to: timeline.to,
      open: true,
      values: open.values,
      events: [open.from],
    });
  return found.map((difference) => ({ ...difference, isExpected: isOfSwap(facts, difference) }));
}

function isOfSwap({ moduleChanges }: PairFacts, { from, to, open }: Omit<Difference, 'isExpected'>): boolean {
  return (
    !open &&
    moduleChanges.some(
      (c) =>
        (c.inserted ?? c.removed).earliest <= to &&
        c.removed.earliest <= from + ofSwapMs &&
        c.removed.earliest <= to,
    )
  );
}
