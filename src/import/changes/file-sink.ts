import { entryReader } from '../phrasebook/entries.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { takeUnchanged } from '../row-cache/take-unchanged.ts';
import { noRounds, settleRuns } from '../row-cache/together.ts';
import type { FileSink } from './sink.ts';
import { clockStepsOf, resultOf } from './sink-result.ts';
import {
  beginRow,
  countsOf,
  ends,
  finishRow,
  mark,
  noRow,
  rejectRow,
  type State,
  unitOf,
} from './sink-state.ts';
import { takeEntry, takeNote } from './take-entries.ts';
import { takeAgain, takeReading } from './take-readings.ts';

/** A sink for one file. */
export function fileSink(phrasebook: Phrasebook): FileSink {
  const state: State = {
    phrasebook,
    tally: { 0: 0, 1: 0, 2: 0, 3: 0, 4: 0, 5: 0, 6: 0 },
    units: new Map(),
    unitList: [],
    behind: 0,
    changes: [],
    wordings: new Map(),
    meaningless: new Map(),
    rejected: [],
    unmatchedLines: [],
    gauges: [],
    entries: entryReader(phrasebook),
    said: [],
    isPlain: true,
    row: noRow,
    end: ends.none,
    lastLine: 0,
    lastRejected: undefined,
    rounds: noRounds(),
  };
  return {
    begin: (row, isLearnt = false) => beginRow(state, row, isLearnt),
    finish: () => finishRow(state),
    reading: (at, unit, name, value, parts) =>
      takeReading(state, at, unitOf(state, unit, parts, 'reading'), name, value),
    entry: (at, unit, message, parts) => takeEntry(state, at, unitOf(state, unit, parts, 'entry'), message),
    note: (at, pair, half, text) => takeNote(state, at, pair, half, text),
    said: () => (state.isPlain ? state.said : null),
    again: (row, at, said, numbers) => takeAgain(state, row, at, said, numbers),
    unchanged: (run, at, place) => takeUnchanged(state, run, at, place),
    settle: () => settleRuns(state.rounds),
    changes: () => state.changes.length,
    rows: () => countsOf(state).read,
    reject: (what, fix) => rejectRow(state, what, fix),
    ignore: () => mark(state, ends.ignored),
    behind: () => state.behind,
    steps: () => clockStepsOf(state),
    result: (file) => resultOf(state, file),
  };
}
