import type { Signal } from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import type { Row } from '../bytes/row.ts';
import { takeInOrder } from '../clock/clock-order.ts';
import { valueMeant } from '../phrasebook/values.ts';
import { endRound, readAlone } from '../row-cache/together.ts';
import { mayEnd, newParameter, type Parameter } from './parameters.ts';
import { meaningless, type Said, silent } from './said.ts';
import {
  beginRow,
  ends,
  type Found,
  finishRow,
  loseCell,
  mark,
  push,
  type State,
  unmatched,
} from './sink-state.ts';
import { addSpan, medianSpan } from './spacing.ts';
import { takeFound } from './take-entries.ts';
import { touch, type Unit } from './units.ts';

const mostParameters = 5_000;

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

/** Takes one polled value. */
export function takeReading(state: State, at: number, unit: Unit, name: string, value: string): void {
  const parameter = parameterOf(state, unit, name);
  if (typeof parameter === 'string') {
    if (parameter === '') {
      mark(state, ends.ignored);
      if (state.isPlain) state.said.push(meaningless);
    } else if (value !== '') unmatched(state, unknownParameter(unit, parameter, name, value));
    else if (state.isPlain) state.said.push(silent);
    return;
  }
  const isSilent = value === '' && !mayEnd(parameter);
  if (unit.parameters.size >= mostParameters) state.isPlain = false;
  if (state.isPlain)
    state.said.push(isSilent ? silent : { kind: 'reading', unit, parameter, name, value: detached(value) });
  if (isSilent) return;
  const number = parameter.gauge?.number(value) ?? 0;
  if (Number.isNaN(number)) {
    follow(state, at, unit, parameter);
    parameter.lastTime = at;
    unmatched(state, unknownValue(name, value));
  } else takeKnown(state, at, unit, parameter, name, value, number);
}

/** A reading of a parameter that is known, with the number that a gauge shows. */
function takeKnown(
  state: State,
  at: number,
  unit: Unit,
  parameter: Parameter,
  name: string,
  value: string,
  number: number,
): void {
  follow(state, at, unit, parameter);
  if (parameter.gauge !== null) {
    parameter.lastTime = at;
    parameter.gauge.add(at, number);
    mark(state, ends.used);
  } else if (value === parameter.raw) {
    parameter.raw = value;
    parameter.lastTime = at;
    mark(state, ends.unchanged);
  } else takeChange(state, at, unit, parameter, name, value);
}

function follow(state: State, at: number, unit: Unit, parameter: Parameter): void {
  if (parameter.together !== null) readAlone(parameter);
  touch(unit, at, state.row);
  if (takeInOrder(parameter.order, at, state.row)) state.behind += 1;
  if (parameter.lastTime !== Number.NEGATIVE_INFINITY) addSpan(unit.spacing, at - parameter.lastTime);
}

/**
 * Takes what a row says once more: `numbers` are those of its gauges, in their order. Most rows say one thing that was so
 * before: that path is as short as it can be.
 */
export function takeAgain(
  state: State,
  row: Row,
  at: number,
  said: readonly Said[],
  numbers: ArrayLike<number>,
): void {
  const [only] = said;
  endRound(state.rounds);
  state.row = row;
  if (said.length === 1 && only?.kind === 'reading' && only.parameter.raw === only.value) {
    const { unit, parameter, value } = only;
    follow(state, at, unit, parameter);
    // One string for both: then they are compared by their place, not letter by letter.
    parameter.raw = value;
    parameter.lastTime = at;
    state.tally[ends.unchanged] += 1;
    state.lastLine = Math.max(state.lastLine, row.line);
    return;
  }
  beginRow(state, row, false);
  takeSaid(state, at, said, numbers);
  finishRow(state);
}

function takeSaid(state: State, at: number, said: readonly Said[], numbers: ArrayLike<number>): void {
  let gauges = 0;
  for (const one of said) {
    if (one.kind === 'meaningless') mark(state, ends.ignored);
    if (one.kind === 'entry') takeFound(state, at, one.unit, one.message, one.found);
    if (one.kind !== 'reading') continue;
    const { unit, parameter, name, value } = one;
    const number = parameter.gauge === null ? 0 : (numbers[gauges] ?? 0);
    if (parameter.gauge !== null) gauges += 1;
    takeKnown(state, at, unit, parameter, name, value, number);
  }
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
  if (meant === parameter.value || (isFirst && meant === null)) mark(state, ends.unchanged);
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
  return lastTime <= at ? lastTime : at - medianSpan(unit.spacing);
}

/** `6.4` at the very end of a file that has `6.4.1` elsewhere, and never `6.4`, is the begin of it. */
function isBegun({ changes }: State, signal: Signal, value: string | null): boolean {
  if (value === null || value === '') return false;
  const known = changes.flatMap((c) => (c.signal === signal && c.value !== null ? [c.value] : []));
  return !known.includes(value) && known.some((other) => other.startsWith(value));
}
