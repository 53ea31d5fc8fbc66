import type { NonEmpty, Source, TimelineEvent } from '../vocabulary.ts';

/**
 * An event as an object of its own, of which some may be otherwise. Field by field: an event or a line that is still columns has none of its
 * own to be copied, and does not cross to another thread.
 */
export function eventWith(event: TimelineEvent, other: Partial<TimelineEvent> = {}): TimelineEvent {
  const { kind, time, earliest, pair, half, signal, value, before } = event;
  const { resolution, initial, concluded, sources } = event;
  const [first, ...rest] = sources;
  const lines: NonEmpty<Source> = [ownLine(first), ...rest.map(ownLine)];
  const own = { kind, time, earliest, pair, half, signal, value, before };
  return { ...own, resolution, initial, concluded, sources: lines, ...other };
}

function ownLine({ file, line, text, count, printed }: Source): Source {
  return { file, line, text, count, printed };
}
