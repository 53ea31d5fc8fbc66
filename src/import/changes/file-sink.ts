import { doubtfulPairs } from './doubtful-pairs.ts';
import { unitOf } from './find-unit.ts';
import { memoryTaken } from './memory-budget.ts';
import type { ClosedSink, FileSink, Sink } from './sink.ts';
import { clockStepsOf, resultOf } from './sink-result.ts';
import {
  beginRow,
  checkOpen,
  countsOf,
  ends,
  finishRow,
  mark,
  rejectRow,
  type SinkState,
} from './sink-state.ts';
import { takeEntry, takeNote } from './take-entries.ts';
import { takeReading } from './take-readings.ts';
import { takeUnread } from './take-unread.ts';

/** The sink of one file, over the state that a row cache may share. */
export function fileSink(state: SinkState): FileSink {
  const sink: Sink = {
    reading: (at, unit, name, value, parts) =>
      takeReading(state, at, unitOf(state, unit, parts, 'reading'), name, value),
    unread: (_at, quality) => takeUnread(state, quality),
    entry: (at, unit, message, parts, beside) =>
      takeEntry(state, at, unitOf(state, unit, parts, 'entry'), message, beside),
    note: (at, pair, half, text) => takeNote(state, at, pair, half, text),
    reject: (what, fix, setting) => rejectRow(state, what, fix, setting),
    ignore() {
      state.isRepeatable = false;
      mark(state, ends.ignored);
    },
  };
  return {
    take(row, read, isRecorded) {
      beginRow(state, row, isRecorded);
      read(row, sink);
      finishRow(state);
      return state.isRepeatable ? state.recorded : null;
    },
    taken: () => memoryTaken(state.changes.length, state.unitList.length),
    rows: () => countsOf(state).read,
    soFar: () => soFar(state),
    close() {
      checkOpen(state);
      const closed = soFar(state);
      state.isClosed = true;
      return closed;
    },
  };
}

function soFar(state: SinkState): ClosedSink {
  state.cache.beforeClose();
  return {
    outOfOrder: state.outOfOrder,
    doubtful: doubtfulPairs(state),
    steps: clockStepsOf(state),
    result: (file) => resultOf(state, file),
  };
}
