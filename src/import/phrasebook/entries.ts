import { isStateSignal, type Subject } from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import { fitsFile } from './file-names.ts';
import { isMeant, type Meaning, meaningOf, type Understood } from './meanings.ts';
import { messageRules } from './message-rules.ts';
import { isDoubtfulNote } from './noted-work.ts';
import type { Groups } from './patterns.ts';
import { fitsOwn, type MessageRule, type Phrasebook, type UsedRules } from './phrasebook-rules.ts';
import { type Matched, ruleFinder } from './rule-finder.ts';
import { isSure, withRemarks } from './statements.ts';
import { subjectOf } from './subjects.ts';
import { saidBeside } from './value-beside.ts';

/** Where a message stands. */
export interface MessageRow {
  /** The row's unit as the log names it. */
  readonly unit: string;
  /** The condition that it names no longer stands. */
  readonly isOff: boolean;
  /** What stands beside the message as its value; empty where nothing does. */
  readonly value: string;
  /** What something else beside it says against it. */
  readonly against: 'denies' | 'undoes' | null;
}

/** Turns messages into what they mean. */
export interface EntryReader {
  read(unit: Subject | null, message: string, row?: MessageRow): Meaning;
  /**
   * False only if a message was read, and all that differ from it in their digits alone are read as it was in rows of its
   * unit: as one that no rule fits, or as one to ignore.
   */
  digitsMatter(message: string, unit: string): boolean;
  /** What a technician's line means; at least a note. */
  readNote(pair: Subject, text: string): readonly Understood[];
}

/** "not removed yet", "before we switch over": what was not done, or not yet. */
const undone =
  /\b(?:not|never|cannot|can't|didn't|won't|will|should|would|could|before|until|unless|if|to be)\b[^,;.]*\b(?:pull|remov|t[ao]k|withdr|put|fit|insert|seat|switch|(?:re)?flash)/i;

/** The reader of the messages of one file: `used` takes the rules that were of use. */
export function entryReader(phrasebook: Phrasebook, file = '', used: UsedRules = new Set()): EntryReader {
  const ofFile = (rules: readonly MessageRule[]): readonly MessageRule[] =>
    rules.filter(({ only }) => only.file === undefined || fitsFile(only.file, file));
  const rules = messageRules(phrasebook, ofFile(phrasebook.messages), used);
  const notes = ruleFinder(() => ofFile(phrasebook.notes()), used);
  return {
    read(unit, message, row = noRow) {
      const { unit: text, value, isOff } = row;
      const alone = rules.find(message, text);
      // A name and its value in two columns are one message: "partner ready", "false".
      const isOpen =
        value !== '' && alone !== 'ignored' && (alone === 'unknown' || alone.rule.place === null);
      const whole = isOpen ? rules.find(`${message} ${value}`, text) : alone;
      const found = typeof whole === 'string' ? alone : whole;
      if (typeof found === 'string') return found === 'unknown' ? 'message' : found;
      const isPlain = found.rule.place === null;
      if (isPlain && !isSure(found, message)) return 'message';
      if (isPlain && (row.against === 'undoes' || (found === alone && !standsBeside(found, row))))
        return 'value';
      const named = found.groups.unit;
      if (named !== undefined && fitsOwn(phrasebook.ignoreUnits, named, used)) return 'ignored';
      const from = unitNamed(phrasebook, found.groups) ?? unit;
      if (from === null) return 'unit';
      const meant = meaningOf(from, found, message, isOff);
      return isPlain && isMeant(meant)
        ? withRemarks(rules, { found, meant, from, message, unit: text, isOff })
        : meant;
    },
    digitsMatter: rules.digitsMatter,
    readNote(pair, text) {
      const found = notes.first(text, pair.pair);
      const isOwn = found !== undefined && phrasebook.messages.includes(found.rule);
      const isDone = found !== undefined && (isOwn || isSurelyDone(found, text));
      const meant = isDone ? meaningOf(pair, found, text, false) : 'message';
      const subject = { pair: pair.pair, half: null, role: null };
      return Array.isArray(meant) ? meant : [{ subject, signal: 'note', value: detached(text) }];
    },
  };
}

/** Whether what built-in words find in a technician's line was done, then and with a module. */
function isSurelyDone({ rule }: Matched, text: string): boolean {
  return !undone.test(text) && !rule.means.some(({ signal }) => isDoubtfulNote(signal, text));
}

/** A message by itself. */
const noRow: MessageRow = { unit: '', isOff: false, value: '', against: null };

/** Whether plain English still says what it does, with a value beside it that is no part of it, or with what is said against it. */
function standsBeside({ rule, groups }: Matched, { value, against }: MessageRow): boolean {
  const says = saidBeside(value);
  // "Partner ready" is a name as well: only what affirms it makes it a statement.
  const isName =
    (groups.value ?? '') === '' &&
    rule.means.some(({ value: own, values }) => own === undefined && '' in values);
  const isState = rule.means.every(({ signal }) => isStateSignal(signal));
  // What says its own value says no less for a "no" under some other name.
  if (against === 'denies' && (isName || !isState)) return false;
  return value === '' || says === 'affirms' || (says === 'nothing' && !isName);
}

function unitNamed(phrasebook: Phrasebook, groups: Groups): Subject | null {
  const unit = groups.unit;
  return unit === undefined ? null : subjectOf(phrasebook, { unit, half: '', role: '' });
}
