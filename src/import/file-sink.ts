import { takeInOrder } from './clock-order.ts';
import { detached } from './decode.ts';
import { entryReader } from './entries.ts';
import type { Phrasebook } from './phrasebook-rules.ts';
import type { FileSink } from './sink.ts';
import { clockStepsOf, resultOf } from './sink-result.ts';
import {
  beginRow,
  countsOf,
  ends,
  type Found,
  finishRow,
  mark,
  noRow,
  push,
  rejectRow,
  type State,
  unitOf,
  unmatched,
} from './sink-state.ts';
import { takeAgain, takeReading, takeUnchanged } from './take-readings.ts';
import { touch, type Unit } from './units.ts';

const minuteMs = 60_000;
/** More do not fit the memory of an old laptop. Chosen here. */
const mostChanges = 2_000_000;

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
    unchanged: (rows, rowAt, at) => takeUnchanged(state, rows, rowAt, at),
    isFull: () => state.changes.length > mostChanges,
    rows: () => countsOf(state).read,
    reject: (what, fix) => rejectRow(state, what, fix),
    ignore: () => mark(state, ends.ignored),
    behind: () => state.behind,
    steps: () => clockStepsOf(state),
    result: (file) => resultOf(state, file),
  };
}

const sameLineMs = 1000;

function takeEntry(state: State, at: number, unit: Unit, message: string): void {
  state.isPlain = false;
  const { lastEntry } = unit;
  const same = lastEntry === undefined ? undefined : state.changes[lastEntry.change];
  const isAgain = lastEntry?.message === message && Math.abs(at - lastEntry.at) <= sameLineMs;
  if (isAgain && same !== undefined) {
    state.changes[lastEntry.change] = { ...same, count: same.count + 1 };
    mark(state, ends.unchanged);
    return;
  }
  unit.lastEntry = undefined;
  takeInOrder(unit.order, at, state.row);
  const found = state.entries.read(unit.subject, message);
  if (unit.subject !== null) touch(unit, at, state.row);
  if (found === 'ignored') {
    mark(state, ends.ignored);
    return;
  }
  if (found === 'unit' || found === 'message') {
    // Neither can be understood without the other: a person must teach both.
    if (found === 'message' && unit.subject === null) unmatched(state, unknownEntry('unit', unit, message));
    unmatched(state, unknownEntry(found, unit, message));
    return;
  }
  unit.signals.add(found.signal);
  unit.lastEntry = { message: detached(message), at, change: state.changes.length };
  push(state, { kind: 'entry', time: at, earliest: at, before: null, stream: unit.index, ...found });
}

function unknownEntry(kind: 'unit' | 'message', unit: Unit, message: string): Found {
  return kind === 'unit'
    ? { wording: `unit ${unit.text}`, kind, name: unit.text }
    : { wording: message, kind, name: message };
}

function takeNote(state: State, at: number, pair: string, half: string | null, text: string): void {
  state.isPlain = false;
  const unit = unitOf(state, pair, undefined, 'note');
  const subject = { ...(unit.subject ?? { pair, role: null }), half };
  touch(unit, at, state.row);
  const found = state.entries.readNote(subject, text);
  unit.signals.add(found.signal);
  push(state, {
    kind: 'note',
    time: at + minuteMs,
    earliest: at,
    before: null,
    stream: unit.index,
    ...found,
  });
}
