import type { Row } from '../bytes/row.ts';
import type { Recorded } from '../changes/recorded.ts';
import { keepResumed } from '../changes/silences.ts';
import { beginRow, checkOpen, ends, finishRow, mark, type SinkState } from '../changes/sink-state.ts';
import { takeFound } from '../changes/take-entries.ts';
import { follow, takeKnown } from '../changes/take-readings.ts';
import { countUnread } from '../changes/take-unread.ts';
import { endCycle, type PendingBatches } from './pending-batches.ts';

/**
 * Takes what was recorded of a row at another instant: `numbers` are those of its gauges, in their order. Most rows hold one
 * reading that is unchanged: that path is as short as it can be.
 */
export function takeRow(
  state: SinkState,
  pending: PendingBatches,
  row: Row,
  at: number,
  recorded: readonly Recorded[],
  numbers: ArrayLike<number>,
): void {
  const [only] = recorded;
  checkOpen(state);
  endCycle(pending);
  state.row = row;
  if (recorded.length === 1 && only?.kind === 'reading' && only.parameter.raw === only.value) {
    const { unit, parameter, value } = only;
    if (follow(state, at, unit, parameter)) keepResumed(state, unit, parameter, at, row);
    // One string for both: then they are compared by their place, not letter by letter.
    parameter.raw = value;
    parameter.lastTime = at;
    state.tally[ends.unchanged] += 1;
    state.lastLine = Math.max(state.lastLine, row.line);
    return;
  }
  beginRow(state, row, false);
  takeRecorded(state, at, recorded, numbers);
  finishRow(state);
}

function takeRecorded(
  state: SinkState,
  at: number,
  recorded: readonly Recorded[],
  numbers: ArrayLike<number>,
): void {
  let gauges = 0;
  for (const one of recorded) {
    if (one.kind === 'ignored') mark(state, ends.ignored);
    if (one.kind === 'unread') countUnread(state, one.quality);
    if (one.kind === 'entry') takeFound(state, at, one);
    if (one.kind !== 'reading') continue;
    const { unit, parameter, name, value } = one;
    const number = parameter.gauge === null ? 0 : (numbers[gauges] ?? 0);
    if (parameter.gauge !== null) gauges += 1;
    takeKnown(state, at, unit, parameter, name, value, number);
  }
}
