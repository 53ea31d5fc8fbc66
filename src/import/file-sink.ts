import type { Signal } from '../vocabulary.ts';
import { detached } from './decode.ts';
import { entryReader } from './entries.ts';
import { mayEnd, newParameter, type Parameter } from './parameters.ts';
import type { Phrasebook } from './phrasebook-rules.ts';
import type { FileSink } from './sink.ts';
import { clockStepsOf, resultOf } from './sink-result.ts';
import {
  beginRow,
  type Found,
  finishRow,
  loseCell,
  mark,
  noRow,
  push,
  rejectRow,
  type State,
  unitOf,
  unmatched,
} from './sink-state.ts';
import { touch, type Unit } from './units.ts';
import { valueMeant } from './values.ts';

const minuteMs = 60_000;
const mostParameters = 5_000;

/** A sink for one file. */
export function fileSink(phrasebook: Phrasebook): FileSink {
  const state: State = {
    phrasebook,
    counts: { read: 0, used: 0, unchanged: 0, ignored: 0, unmatched: 0, rejected: 0 },
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
    row: noRow,
    outcome: 'none',
    lastLine: 0,
    lastRejected: undefined,
  };
  return {
    begin: (row) => beginRow(state, row),
    finish: () => finishRow(state),
    reading: (at, unit, name, value, parts) =>
      takeReading(state, at, unitOf(state, unit, parts, 'reading'), name, value),
    entry: (at, unit, message, parts) => takeEntry(state, at, unitOf(state, unit, parts, 'entry'), message),
    note: (at, pair, half, text) => takeNote(state, at, pair, half, text),
    reject: (what, fix) => rejectRow(state, what, fix),
    ignore: () => mark(state, 'ignored'),
    behind: () => state.behind,
    steps: () => clockStepsOf(state),
    result: (file) => resultOf(state, file),
  };
}

function parameterOf(state: State, unit: Unit, name: string): Parameter | string {
  const known = unit.parameters.get(name);
  if (known !== undefined) return known;
  const made =
    unit.subject === null ? `unit ${unit.text}` : newParameter(state.phrasebook, unit.subject, name);
  if (typeof made !== 'string' && made.gauge !== null) state.gauges.push(made.gauge);
  // Names without end are no parameters: what is not kept is found anew each time.
  if (unit.parameters.size < mostParameters) unit.parameters.set(detached(name), made);
  return made;
}

function takeReading(state: State, at: number, unit: Unit, name: string, value: string): void {
  const parameter = parameterOf(state, unit, name);
  if (typeof parameter === 'string') {
    if (parameter === '') mark(state, 'ignored');
    else if (value !== '') unmatched(state, unknownParameter(unit, parameter, name, value));
    return;
  }
  if (value === '' && !mayEnd(parameter)) return;
  touch(unit, at, state.row);
  if (parameter.order.take(at, state.row)) state.behind += 1;
  if (parameter.lastTime !== Number.NEGATIVE_INFINITY) unit.spacing.add(at - parameter.lastTime);
  if (parameter.gauge !== null) {
    parameter.lastTime = at;
    if (parameter.gauge.add(at, value)) mark(state, 'used');
    else unmatched(state, unknownValue(name, value));
  } else if (value === parameter.raw) {
    parameter.lastTime = at;
    mark(state, 'unchanged');
  } else takeChange(state, at, unit, parameter, name, value);
}

function unknownParameter(unit: Unit, wording: string, name: string, value: string): Found {
  return unit.subject === null
    ? { wording, kind: 'unit', name: unit.text }
    : { wording, kind: 'parameter', name, value };
}

function unknownValue(name: string, value: string): Found {
  return { wording: `${name} = ${value}`, kind: 'value', name, value };
}

function takeChange(
  state: State,
  at: number,
  unit: Unit,
  parameter: Parameter,
  name: string,
  value: string,
): void {
  const { rule, signal, subject } = parameter;
  const meant = value === '' ? null : valueMeant(rule.signal, rule.values, value);
  if (meant === undefined || signal === null) {
    unmatched(state, unknownValue(name, value));
    return;
  }
  if (state.row.isCut && isBegun(state, signal, meant)) {
    loseCell(state);
    return;
  }
  const isFirst = parameter.value === undefined;
  if (meant === parameter.value || (isFirst && meant === null)) mark(state, 'unchanged');
  else {
    unit.signals.add(signal);
    push(state, {
      kind: 'reading',
      time: at,
      earliest: earliestOf(unit, parameter, at),
      subject,
      signal,
      value: meant === null ? null : detached(meant),
      before: parameter.value ?? null,
      stream: unit.index,
    });
  }
  parameter.raw = detached(value);
  parameter.value = meant === null ? null : detached(meant);
  parameter.lastTime = at;
}

/** The last reading with the old value; behind a clock that was set back, the usual spacing before this one. */
function earliestOf(unit: Unit, { lastTime }: Parameter, at: number): number {
  if (lastTime === Number.NEGATIVE_INFINITY) return at;
  return lastTime <= at ? lastTime : at - unit.spacing.median();
}

/** `6.4` at the very end of a file that has `6.4.1` elsewhere, and never `6.4`, is the begin of it. */
function isBegun({ changes }: State, signal: Signal, value: string | null): boolean {
  if (value === null || value === '') return false;
  const known = changes.flatMap((c) => (c.signal === signal && c.value !== null ? [c.value] : []));
  return !known.includes(value) && known.some((other) => other.startsWith(value));
}

const sameLineMs = 1000;

function takeEntry(state: State, at: number, unit: Unit, message: string): void {
  const { lastEntry } = unit;
  const same = lastEntry === undefined ? undefined : state.changes[lastEntry.change];
  const isAgain = lastEntry?.message === message && Math.abs(at - lastEntry.at) <= sameLineMs;
  if (isAgain && same !== undefined) {
    state.changes[lastEntry.change] = { ...same, count: same.count + 1 };
    mark(state, 'unchanged');
    return;
  }
  unit.lastEntry = undefined;
  unit.order.take(at, state.row);
  const found = state.entries.read(unit.subject, message);
  if (unit.subject !== null) touch(unit, at, state.row);
  if (found === 'ignored') {
    mark(state, 'ignored');
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
