import { topicAt, valueAt } from '../../changes.ts';
import type { Signal } from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import { takeInOrder } from '../clock/clock-order.ts';
import { valueMeant } from '../phrasebook/values.ts';
import { ownerOf } from './find-unit.ts';
import { leaveShared, mayEnd, newParameter, type Parameter, readUntil } from './parameters.ts';
import { emptyCell, ignoredCell } from './recorded.ts';
import { endsSilence, keepResumed } from './silences.ts';
import { ends, loseCell, mark, push, type SinkState } from './sink-state.ts';
import { addSpan, medianSpan } from './spacing.ts';
import { touch, type Unit } from './units.ts';
import { type Found, unmatched } from './unknown-wordings.ts';

const mostParameters = 5_000;

function parameterOf(state: SinkState, unit: Unit, name: string): Parameter | string {
  const known = unit.parameters.get(name);
  if (known !== undefined) return known;
  const { phrasebook, used } = state;
  const made =
    unit.subject === null && !isUnnamed(state, unit)
      ? `unit ${unit.text}`
      : newParameter(phrasebook, unit.subject, name, used);
  if (typeof made !== 'string' && made.gauge !== null) state.gauges.push(made.gauge);
  // So many names are no parameters: what is not kept is looked up again each time.
  if (unit.parameters.size < mostParameters) unit.parameters.set(detached(name), made);
  return made;
}

/** The row names no unit, and need not, since the names of parameters may. */
function isUnnamed({ phrasebook }: SinkState, { text }: Unit): boolean {
  return text === '' && phrasebook.parameterPatterns?.nameUnits === true;
}

/** Takes one polled value. */
export function takeReading(state: SinkState, at: number, row: Unit, name: string, value: string): void {
  const unit = state.phrasebook.parameterPatterns === null || row.isIgnored ? row : ownerOf(state, row, name);
  if (unit.isIgnored) {
    mark(state, ends.ignored);
    if (state.isRepeatable) state.recorded.push(ignoredCell);
    return;
  }
  const parameter = parameterOf(state, unit, name);
  if (typeof parameter === 'string') {
    if (parameter === '') {
      mark(state, ends.ignored);
      if (state.isRepeatable) state.recorded.push(ignoredCell);
    } else if (value !== '')
      unmatched(state, unit, at, unknownParameter(state, unit, parameter, name, value));
    else if (state.isRepeatable) state.recorded.push(emptyCell);
    return;
  }
  const isEmpty = value === '' && !mayEnd(parameter);
  if (unit.parameters.size >= mostParameters) state.isRepeatable = false;
  if (state.isRepeatable)
    state.recorded.push(
      isEmpty ? emptyCell : { kind: 'reading', unit, parameter, name, value: detached(value) },
    );
  if (isEmpty) return;
  const number = parameter.gauge?.number(value) ?? 0;
  if (Number.isNaN(number)) {
    follow(state, at, unit, parameter);
    parameter.lastTime = at;
    unmatched(state, unit, at, unknownValue(name, value));
  } else takeKnown(state, at, unit, parameter, name, value, number);
}

/** A reading of a parameter that is known, with the number that a gauge shows. */
export function takeKnown(
  state: SinkState,
  at: number,
  unit: Unit,
  parameter: Parameter,
  name: string,
  value: string,
  number: number,
): void {
  const isResumed = follow(state, at, unit, parameter);
  if (parameter.gauge !== null) {
    parameter.lastTime = at;
    parameter.gauge.add(at, number);
    mark(state, ends.used);
  } else if (value === parameter.raw) {
    if (isResumed) keepResumed(state, unit, parameter, at, state.row);
    parameter.raw = value;
    parameter.lastTime = at;
    mark(state, ends.unchanged);
  } else takeChange(state, at, unit, parameter, name, value, isResumed);
}

/** Notes that a parameter was read at an instant; true if it is read again after a silence. */
export function follow(state: SinkState, at: number, unit: Unit, parameter: Parameter): boolean {
  if (parameter.shared !== null) leaveShared(parameter);
  touch(unit, at, state.row);
  const span = at - parameter.lastTime;
  const isResumed = span > unit.spacing.usualTo && endsSilence(unit, parameter, at);
  if (takeInOrder(parameter.order, at, state.row)) {
    state.outOfOrder += 1;
    parameter.latest = readUntil(parameter);
  }
  if (parameter.lastTime !== Number.NEGATIVE_INFINITY) addSpan(unit.spacing, span);
  return isResumed;
}

function unknownParameter(state: SinkState, unit: Unit, wording: string, name: string, value: string): Found {
  return unit.subject === null && !isUnnamed(state, unit)
    ? { wording, kind: 'unit', name: unit.text }
    : { wording, kind: 'parameter', name, value };
}

function unknownValue(name: string, value: string): Found {
  return { wording: `${name} = ${value}`, kind: 'value', name, value };
}

function takeChange(
  state: SinkState,
  at: number,
  unit: Unit,
  parameter: Parameter,
  name: string,
  value: string,
  isResumed: boolean,
): void {
  const { rule, signal, subject } = parameter;
  const meant = value === '' ? null : valueMeant(rule.signal, rule.values, value);
  if (meant === undefined || signal === null) {
    unmatched(state, unit, at, unknownValue(name, value));
    return;
  }
  if (state.row.isCut && isBegun(state, signal, meant)) {
    loseCell(state);
    return;
  }
  const isFirst = parameter.value === undefined;
  if (meant === parameter.value || (isFirst && meant === null)) {
    mark(state, ends.unchanged);
    if (isResumed) keepResumed(state, unit, parameter, at, state.row);
  } else {
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

/** The last reading with the old value; after a clock was set back, the usual spacing before this one. */
function earliestOf(unit: Unit, { lastTime }: Parameter, at: number): number {
  if (lastTime === Number.NEGATIVE_INFINITY) return at;
  return lastTime <= at ? lastTime : at - medianSpan(unit.spacing);
}

/** `6.4` at the very end of a file that has `6.4.1` elsewhere, and never `6.4`, is the start of that. */
function isBegun({ changes }: SinkState, signal: Signal, value: string | null): boolean {
  if (value === null || value === '') return false;
  const told = changes.soFar();
  const known = new Set<string | null>();
  for (let place = 0; place < told.length; place += 1)
    if (topicAt(told, place)?.signal === signal) known.add(valueAt(told, place));
  return !known.has(value) && [...known].some((other) => other?.startsWith(value));
}
