import type { TimelineEvent } from '../vocabulary.ts';
import type { Loss } from './losses.ts';
import type { TimelineRules } from './rules.ts';

/** Counted losses of one pair that follow each other closely, as one: when the first was and all of them, in the order of time. */
export interface Bout {
  readonly time: number;
  readonly losses: readonly TimelineEvent[];
}

/**
 * The bouts of a pair: each counted loss that follows the one before by at most `boutMs` belongs to its bout. What compares
 * pairs or times counts bouts, since one trouble brings many losses. Source: design.md, section 4, Losses.
 */
export function boutsOf(losses: readonly Loss[], { boutMs }: TimelineRules): readonly Bout[] {
  const bouts: { time: number; losses: TimelineEvent[] }[] = [];
  for (const { event } of losses.filter((l) => l.kind === 'counted')) {
    const bout = bouts.at(-1);
    const last = bout?.losses.at(-1);
    if (bout === undefined || last === undefined || event.time - last.time > boutMs)
      bouts.push({ time: event.time, losses: [event] });
    else bout.losses.push(event);
  }
  return bouts;
}
