import type { Subject } from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import { takeInOrder } from '../clock/clock-order.ts';
import { isMeant, type Meaning } from '../phrasebook/meanings.ts';
import { halfSaid } from '../phrasebook/spoken-subjects.ts';
import { type Condition, conditionIn } from './conditions.ts';
import { unitOf } from './find-unit.ts';
import type { RecordedEntry } from './recorded.ts';
import type { Beside } from './sink.ts';
import { ends, mark, push, type SinkState } from './sink-state.ts';
import { noteUnclear } from './unclear-rules.ts';
import { touch, type Unit } from './units.ts';
import { type Found, unmatched } from './unknown-wordings.ts';

const sameLineMs = 1000;
const minuteMs = 60_000;

/** Takes one journalled message, and records it for rows of the same content. */
export function takeEntry(
  state: SinkState,
  at: number,
  unit: Unit,
  text: string,
  { state: said, value = '', against, ended }: Beside = {},
): void {
  // How long it stood is another for each row.
  const isRecorded = state.isRepeatable && !state.row.isCut && ended === undefined;
  const isSaid = said !== undefined && ended === undefined;
  const condition = isSaid ? conditionIn(state.conditions, said, state.row) : null;
  const found = meaningOf(state, unit, text, { value, against }, condition);
  // A message that is not known is known by its own words, whatever stands beside it.
  const beside = [text, value, against?.text ?? ''].filter((part) => part !== '').join(' ');
  const message = found === 'message' ? text : beside;
  const isKept = isRecorded || isMeant(found);
  const entry: RecordedEntry = {
    kind: 'entry',
    unit,
    message: isKept ? detached(message) : message,
    condition,
    found,
    digitsMatter:
      isRecorded && !unit.isIgnored && (beside !== text || state.entries.digitsMatter(message, unit.text)),
  };
  takeFound(state, at, entry);
  if (ended !== undefined) {
    const over = { ...overNow, count: 0 };
    const offFound = meaningOf(state, unit, text, { value, against }, over);
    takeFound(state, ended, { ...entry, condition: over, found: offFound }, false);
  }
  state.isRepeatable = isRecorded;
  if (isRecorded) state.recorded = [entry];
}

function meaningOf(
  state: SinkState,
  unit: Unit,
  message: string,
  { value = '', against }: Beside,
  condition: Condition | null,
): Meaning {
  if (unit.isIgnored) return 'ignored';
  const stands = condition === null ? 'on' : condition.stands;
  if (stands === null || stands === undefined) return 'ignored';
  return state.entries.read(subjectFor(unit, message), message, {
    unit: unit.text,
    isOff: stands === 'off',
    value: value.trim(),
    against: against?.says ?? null,
  });
}

/** What the unit of a message leaves open to its words: a file says the half of what its messages do not say otherwise. */
function subjectFor({ subject, isHalfOfFile }: Unit, message: string): Subject | null {
  return isHalfOfFile && subject !== null && halfSaid(message) !== null
    ? { ...subject, half: null }
    : subject;
}

/** A condition whose row says when it ended. */
const overNow: Omit<Condition, 'count'> = { text: '', stands: 'off', line: 0, row: '' };

/**
 * Takes a message that is understood, or known not to be; one that is understood must be a string of its own. Unless it `isInOrder`, it tells
 * nothing of the order of rows.
 */
export function takeFound(state: SinkState, at: number, entry: RecordedEntry, isInOrder = true): void {
  const { unit, message, condition, found } = entry;
  if (condition !== null) condition.count += 1;
  const { lastEntry } = unit;
  const isAgain =
    lastEntry?.message === message &&
    lastEntry.condition === condition &&
    Math.abs(at - lastEntry.at) <= sameLineMs;
  if (isAgain && countAgain(state, lastEntry)) {
    mark(state, ends.unchanged);
    return;
  }
  unit.lastEntry = undefined;
  if (isInOrder) takeInOrder(unit.order, at, state.row);
  if (unit.subject !== null) touch(unit, at, state.row);
  if (found === 'ignored') {
    mark(state, ends.ignored);
    return;
  }
  if (!isMeant(found)) {
    const kind = found === 'unit' ? 'unit' : 'message';
    // Neither can be understood without the other: a person must teach both.
    if (kind === 'message' && unit.subject === null)
      unmatched(state, unit, at, unknownEntry('unit', unit, message));
    unmatched(state, unit, at, unknownEntry(kind, unit, message, found === 'message'));
    if (typeof found === 'object') noteUnclear(state.unclear, state.row, found, message);
    return;
  }
  unit.lastEntry = { message, condition, at, change: state.changes.length, count: found.length };
  // Field by field: to spread what is said over a change takes several times as long.
  for (const { subject, signal, value } of found) {
    unit.signals.add(signal);
    const { index: stream } = unit;
    push(state, { kind: 'entry', time: at, earliest: at, before: null, stream, subject, signal, value });
  }
}

/** The same line again within its second is no other: its changes count once more. False where they are not known. */
function countAgain({ changes }: SinkState, { change, count }: NonNullable<Unit['lastEntry']>): boolean {
  for (let place = change; place < change + count; place += 1) {
    if (!changes.countAgain(place)) return false;
  }
  return true;
}

/** Wording as it is listed; what no rule fits was asked about already. */
function unknownEntry(kind: 'unit' | 'message', unit: Unit, message: string, isHeeded = false): Found {
  if (kind === 'message') return { wording: message, kind, name: message, isHeeded };
  return { wording: unit.text === '' ? 'no unit is named' : `unit ${unit.text}`, kind, name: unit.text };
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
  for (const said of state.entries.readNote(subject, text)) {
    unit.signals.add(said.signal);
    push(state, {
      kind: 'note',
      time: at + minuteMs,
      earliest: at,
      before: null,
      stream: unit.index,
      ...said,
    });
  }
}
