import type { Signal } from '../vocabulary.ts';
import { detached } from './decode.ts';
import { entryReader } from './entries.ts';
import { mayEnd, newParameter, type Parameter } from './parameters.ts';
import type { Phrasebook } from './phrasebook-rules.ts';
import { damagedTail, isTotal, rowNotices } from './row-notices.ts';
import type { FileSink, SinkResult } from './sink.ts';
import {
  beginRow,
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
import { toStream, touch, type Unit } from './units.ts';
import { valueMeant } from './values.ts';

const minuteMs = 60_000;

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
    result: (file) => resultOf(state, file),
  };
}

function parameterOf(state: State, unit: Unit, name: string): Parameter | string {
  const known = unit.parameters.get(name);
  if (known !== undefined) return known;
  const made =
    unit.subject === null ? `unit ${unit.text}` : newParameter(state.phrasebook, unit.subject, name);
  if (typeof made !== 'string' && made.gauge !== null) state.gauges.push(made.gauge);
  unit.parameters.set(detached(name), made);
  return made;
}

function takeReading(state: State, at: number, unit: Unit, name: string, value: string): void {
  const parameter = parameterOf(state, unit, name);
  if (typeof parameter === 'string') {
    if (parameter === '') mark(state, 'ignored');
    else if (value !== '') unmatched(state, parameter);
    return;
  }
  if (value === '' && !mayEnd(parameter)) return;
  touch(unit, at, state.row);
  if (at < parameter.lastTime) state.behind += 1;
  if (parameter.lastTime !== Number.NEGATIVE_INFINITY) unit.spacing.add(at - parameter.lastTime);
  if (parameter.gauge !== null) {
    parameter.lastTime = at;
    if (parameter.gauge.add(at, value)) mark(state, 'used');
    else unmatched(state, `${name} = ${value}`);
  } else if (value === parameter.raw) {
    if (at > parameter.lastTime) parameter.lastTime = at;
    mark(state, 'unchanged');
  } else takeChange(state, at, unit, parameter, name, value);
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
    unmatched(state, `${name} = ${value}`);
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
      earliest: parameter.lastTime === Number.NEGATIVE_INFINITY ? at : Math.min(parameter.lastTime, at),
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
  const found = state.entries.read(unit.subject, unit.text, message);
  if (unit.subject !== null) touch(unit, at, state.row);
  if (typeof found === 'string') {
    if (found === 'ignored') mark(state, 'ignored');
    else unmatched(state, found);
    return;
  }
  unit.signals.add(found.signal);
  unit.lastEntry = { message: detached(message), at, change: state.changes.length };
  push(state, { kind: 'entry', time: at, earliest: at, before: null, stream: unit.index, ...found });
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

/** The streams of the units that said something, and the changes with their places in that list. */
function heard({ unitList, changes }: State): Pick<SinkResult, 'streams' | 'changes'> {
  const units = unitList.filter((u) => u.first !== undefined);
  if (units.length === unitList.length) return { streams: units.map(toStream), changes };
  const places = new Map(units.map((unit, place) => [unit.index, place]));
  return {
    streams: units.map(toStream),
    changes: changes.map((c) => ({ ...c, stream: places.get(c.stream) ?? c.stream })),
  };
}

function resultOf(state: State, file: string): SinkResult {
  const { counts, unitList, rejected, lastRejected, lastLine, unmatchedLines, wordings } = state;
  const tail = lastRejected?.line === lastLine ? lastRejected : undefined;
  const somethingRead = counts.used + counts.unchanged + counts.unmatched > 0;
  const total = tail !== undefined && !tail.isCut && somethingRead && isTotal(tail);
  const damaged = tail?.isCut === true;
  if (total) {
    counts.rejected -= 1;
    counts.ignored += 1;
  }
  const kept = total || damaged ? rejected.filter((r) => r !== tail) : rejected;
  const notices = rowNotices(file, counts, kept, unmatchedLines, wordings.size);
  return {
    rows: counts,
    ...heard(state),
    gauges: state.gauges.map((g) => g.series()),
    unmatched: [...wordings.entries()]
      .map(([wording, { count, firstLine }]) => ({ wording, count, firstLine }))
      .sort((a, b) => b.count - a.count || a.firstLine - b.firstLine),
    units: unitList.map((u) => u.text),
    notices: damaged ? [...notices, damagedTail(file, tail)] : notices,
    last: { line: state.row.line, text: detached(state.row.text()) },
  };
}
