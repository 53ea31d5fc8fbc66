import type { Subject } from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import { takeInOrder } from '../clock/clock-order.ts';
import { halfSaid, type Meaning } from '../phrasebook/entries.ts';
import { unitOf } from './find-unit.ts';
import { ends, mark, push, type SinkState } from './sink-state.ts';
import { touch, type Unit } from './units.ts';
import { type Found, unmatched } from './unknown-wordings.ts';

const sameLineMs = 1000;
const minuteMs = 60_000;

/** Takes one journalled message, and records it for rows of the same content. */
export function takeEntry(state: SinkState, at: number, unit: Unit, message: string): void {
  const isRecorded = state.isRepeatable && !state.row.isCut;
  const found = state.entries.read(subjectFor(unit, message), message);
  takeFound(state, at, unit, message, found);
  state.isRepeatable = isRecorded;
  if (isRecorded) state.recorded = [{ kind: 'entry', unit, message: detached(message), found }];
}

/** What the unit of a message leaves open to its words: a file says the half of what its messages do not say otherwise. */
function subjectFor({ subject, isHalfOfFile }: Unit, message: string): Subject | null {
  return isHalfOfFile && subject !== null && halfSaid(message) !== null
    ? { ...subject, half: null }
    : subject;
}

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
    ? { wording: `unit ${unit.text}`, kind, name: unit.text }
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
  const unit = unitOf(state, pair, { unit: '', pair, half: '', role: '' }, 'note');
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
