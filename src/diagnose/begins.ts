import type { TimelineRules } from '../timeline/rules.ts';
import { countUntil } from '../timeline/tracks.ts';
import type { PairTimeline, Signal, TimelineEvent } from '../vocabulary.ts';

/** Changes to one of some values, first readings left out. */
export function begins(
  { events }: PairTimeline,
  signals: readonly Signal[],
  value: string,
): readonly TimelineEvent[] {
  return events.filter((e) => signals.includes(e.signal) && e.value === value && !e.initial);
}

/**
 * Changes that nothing else explains: those that may have been within some seconds of a removal, an insertion, or another change
 * that is given, belong to it. Source: design.md, section 2, Merging: what belongs to a removal.
 */
export function unexplained(
  changes: readonly TimelineEvent[],
  timeline: PairTimeline,
  others: readonly TimelineEvent[],
  { belongsMs }: TimelineRules,
): readonly TimelineEvent[] {
  const moves = timeline.events.filter((e) => e.signal === 'removed' || e.signal === 'inserted');
  const all = [...moves, ...others].sort((a, b) => a.time - b.time);
  const widest = Math.max(0, ...all.map((e) => e.time - e.earliest));
  return changes.filter(({ time, earliest }) => {
    const near = all.slice(
      countUntil(all, earliest - belongsMs, 'before'),
      countUntil(all, time + belongsMs + widest),
    );
    return !near.some((e) => e.earliest <= time + belongsMs);
  });
}

/** Times at which the second module of the pair dropped out without a removal that would explain it. */
export function dropOuts(timeline: PairTimeline, rules: TimelineRules): readonly TimelineEvent[] {
  const explained = timeline.events.filter(
    (e) => e.signal === 'restart' || (e.signal === 'supply' && e.value === 'fault'),
  );
  return unexplained(begins(timeline, ['partner-present'], 'no'), timeline, explained, rules);
}
