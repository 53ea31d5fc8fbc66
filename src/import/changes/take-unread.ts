import { type Quality, qualityIn } from './qualities.ts';
import { ends, mark, type SinkState } from './sink-state.ts';

/**
 * Takes a value that was polled and not observed: nothing is known of its parameter at this instant, so that it is neither a
 * value nor unchanged, and a spell of them is one in which nothing was read.
 */
export function takeUnread(state: SinkState, said: string): void {
  const quality = qualityIn(state.qualities, said, state.row);
  countUnread(state, quality);
  if (state.isRepeatable) state.recorded.push({ kind: 'unread', quality });
}

/** Counts the row once, however many values of it were not observed. */
export function countUnread(state: SinkState, quality: Quality): void {
  mark(state, ends.ignored);
  if (quality.lastLine !== state.row.line) quality.count += 1;
  quality.lastLine = state.row.line;
}
