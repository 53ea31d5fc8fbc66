import { isStateSignal } from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import { takeInOrder } from '../clock/clock-order.ts';
import type { Meaning } from '../phrasebook/entries.ts';
import { conditionState } from '../phrasebook/state-words.ts';
import { unitOf } from './find-unit.ts';
import { ends, mark, push, type SinkState } from './sink-state.ts';
import { touch, type Unit } from './units.ts';
import { type Found, unmatched } from './unknown-wordings.ts';

const sameLineMs = 1000;
const minuteMs = 60_000;

/**
 * Takes one journalled message, and records it for rows of the same content. `said` is the state of the condition that it names,
 * where a column says it: a condition that no longer stands means the opposite, one that was acknowledged nothing.
 */
export function takeEntry(state: SinkState, at: number, unit: Unit, message: string, said?: string): void {
  const isRecorded = state.isRepeatable && !state.row.isCut;
  const stands = said === undefined || said === '' ? 'on' : (conditionState(said) ?? 'unknown');
  const text = stands === 'on' || said === undefined ? message : `${message} (${said})`;
  const meant = state.entries.read(unit.subject, message);
  const found = stands === 'on' ? meant : stands === 'off' ? oppositeOf(meant) : 'ignored';
  takeFound(state, at, unit, text, found);
  state.isRepeatable = isRecorded;
  if (isRecorded) state.recorded = [{ kind: 'entry', unit, message: detached(text), found }];
}

/** What a condition means that no longer stands. A happening is over then, and says nothing more. */
function oppositeOf(meant: Meaning): Meaning {
  if (typeof meant === 'string') return meant;
  if (!isStateSignal(meant.signal)) return 'ignored';
  const value = opposites.find((pair) => pair.includes(meant.value ?? ''))?.find((v) => v !== meant.value);
  return value === undefined ? 'message' : { ...meant, value };
}

/** Source: design.md, section 3. */
const opposites: readonly (readonly string[])[] = [
  ['yes', 'no'],
  ['up', 'down'],
  ['good', 'fault'],
  ['current', 'pending'],
  ['straight', 'crossed'],
];

/** Takes a message that is understood, or known not to be. */
export function takeFound(state: SinkState, at: number, unit: Unit, message: string, found: Meaning): void {
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
  if (unit.subject !== null) touch(unit, at, state.row);
  if (found === 'ignored') {
    mark(state, ends.ignored);
    return;
  }
  if (found === 'unit' || found === 'message') {
    // Neither can be understood without the other: a person must teach both.
    if (found === 'message' && unit.subject === null)
      unmatched(state, unit, at, unknownEntry('unit', unit, message));
    unmatched(state, unit, at, unknownEntry(found, unit, message));
    return;
  }
  unit.signals.add(found.signal);
  unit.lastEntry = { message: detached(message), at, change: state.changes.length };
  push(state, { kind: 'entry', time: at, earliest: at, before: null, stream: unit.index, ...found });
}

function unknownEntry(kind: 'unit' | 'message', unit: Unit, message: string): Found {
  return kind === 'unit'
    ? { wording: unit.text === '' ? 'no unit is named' : `unit ${unit.text}`, kind, name: unit.text }
    : { wording: message, kind, name: message };
}

/** Takes one line of a technician. */
export function takeNote(
  state: SinkState,
  at: number,
  pair: string,
  half: string | null,
  text: string,
): void {
  state.isRepeatable = false;
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
