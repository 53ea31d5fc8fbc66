import type { TimelineEvent } from '../vocabulary.ts';

/** An event of which some is otherwise. Field by field: an event that is still columns has none of its own to be copied. */
export function eventWith(event: TimelineEvent, other: Partial<TimelineEvent>): TimelineEvent {
  const { kind, time, earliest, pair, half, signal, value, before } = event;
  const { resolution, initial, concluded, sources } = event;
  const own = { kind, time, earliest, pair, half, signal, value, before };
  return { ...own, resolution, initial, concluded, sources, ...other };
}
