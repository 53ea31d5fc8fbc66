import {
  counterpart,
  type Happening,
  isStateSignal,
  pairHappenings,
  pairSignals,
  type Signal,
  type StateSignal,
  type Subject,
} from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import { isDoubtful } from './doubts.ts';
import { fitsFile } from './file-names.ts';
import { messageRules } from './message-rules.ts';
import { oppositeOf } from './opposites.ts';
import type { Groups } from './patterns.ts';
import {
  fitsOwn,
  type MeaningRule,
  type MessageRule,
  type Phrasebook,
  type Place,
  type UsedRules,
} from './phrasebook-rules.ts';
import { type Matched, ruleFinder } from './rule-finder.ts';
import { addressed, roleNamed, subjectOf } from './subjects.ts';
import { saidBeside } from './value-beside.ts';
import { valueMeant } from './values.ts';

export interface Understood {
  readonly subject: Subject;
  readonly signal: Signal;
  readonly value: string | null;
}

/** A message that a rule fits, and why it says nothing all the same. */
export interface Unclear {
  readonly kind: 'unclear';
  /** `off`: what it says where its condition no longer stands; `other`: which half is the other one. */
  readonly lacks: 'off' | 'other';
  readonly place: Place;
  readonly signal: Signal;
}

/**
 * What a message means, one thing or several; that it is known to mean nothing; or what of it is not known. `message`: no rule
 * fits it, nor is it one to ignore; `value`: a rule fits, and what it finds there is not known.
 */
export type Meaning = readonly Understood[] | 'ignored' | 'unit' | 'message' | 'value' | Unclear;

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

/** What a message calls a half besides, or any other module: "module B", "Controller 2". */
const moduleWords =
  /\b(?:module|MODULE|Module|controller|CONTROLLER|Controller|node|NODE|Node|side|SIDE|Side)\s+([A-Z]|\d{1,2})\b/g;
/** The name of a half as a unit is written, "RO1-B". */
const unitName = /(?<![\w-])([A-Za-z][A-Za-z_]*\d+)[-/._]([A-Za-z]|\d{1,2})(?![\w-])/g;
/** "slot B", "Half 2", "pulled B"; not "half a minute", nor "in place of", nor "pulled A new one". */
const halfWords =
  /\b(?:[Ss]lot|SLOT)\s+([A-Za-z]|\d{1,2})\b|\b(?:[Hh]alf|HALF|[Pp]lace|PLACE)\s+([A-Z]|\d{1,2})\b|\b(?:[Pp]ulled|[Rr]emoved|[Ww]ithdrew|[Tt]ook out|[Ff]itted|[Ii]nserted|[Rr]eseated|[Ss]eated|[Pp]ut in)\s+(?:module\s+)?([B-Z]\b|A\b(?!\s+\w))/;
const roleWords = /\b(standby|stby|sby|active)\b/i;
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
      if (isPlain && found.rule.means.some(({ signal }) => isDoubtful(signal, message))) return 'message';
      if (isPlain && (row.against === 'undoes' || (found === alone && !standsBeside(found, row))))
        return 'value';
      const named = found.groups.unit;
      if (named !== undefined && fitsOwn(phrasebook.ignoreUnits, named, used)) return 'ignored';
      const from = unitNamed(phrasebook, found.groups) ?? unit;
      return from === null ? 'unit' : meaningOf(from, found, message, isOff);
    },
    digitsMatter: rules.digitsMatter,
    readNote(pair, text) {
      const found = notes.first(text, pair.pair);
      const isOwn = found !== undefined && phrasebook.messages.includes(found.rule);
      const isDone = found !== undefined && (isOwn || !undone.test(text));
      const meant = isDone ? meaningOf(pair, found, text, false) : 'message';
      const subject = { pair: pair.pair, half: null, role: null };
      return Array.isArray(meant) ? meant : [{ subject, signal: 'note', value: detached(text) }];
    },
  };
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

/** All that a message says: if one thing of it is not understood, the message is not. */
function meaningOf(unit: Subject, found: Matched, message: string, isOff: boolean): Meaning {
  const meant: Understood[] = [];
  for (const said of found.rule.means) {
    const one = meaning(unit, said, found, message, isOff);
    if (one === 'ignored') continue;
    if (typeof one === 'string' || 'kind' in one) return one;
    meant.push(one);
  }
  return meant.length === 0 ? 'ignored' : meant;
}

function meaning(
  unit: Subject,
  said: MeaningRule,
  { rule, groups }: Matched,
  message: string,
  isOff: boolean,
): Understood | 'ignored' | 'value' | Unclear {
  const { signal, off } = said;
  if (isOff && off === 'ignore') return 'ignored';
  const subject = subjectMeant(unit, said, groups, message, rule.place);
  if (subject === 'other') return { kind: 'unclear', lacks: 'other', place: rule.place, signal };
  if (subject === null) return 'value';
  const text = said.value ?? groups.value ?? '';
  const unclear: Unclear = { kind: 'unclear', lacks: 'off', place: rule.place, signal };
  if (!isStateSignal(signal)) {
    // What happened does not happen again where its condition ends: plain English knows that, a site has to say so.
    if (isOff && off === undefined) return rule.place === null ? 'ignored' : unclear;
    const plain = isOff && off !== undefined ? off : text;
    const told = signal === 'note' || signal === 'fault' ? (plain === '' ? message : plain) : plain;
    return { subject, signal, value: told === '' ? null : detached(told) };
  }
  const stands = said.value ?? valueMeant(signal, said.values, text);
  if (stands === undefined || stands === '') return 'value';
  const value = isOff ? (off ?? oppositeOf(signal, stands)) : stands;
  return value === null ? unclear : { subject, signal, value: detached(value) };
}

/** The half that the words of a message name, "slot B"; `null` where they name none. */
export function halfSaid(message: string): string | null {
  const found = halfWords.exec(message);
  return (found?.[1] ?? found?.[2] ?? found?.[3])?.toUpperCase() ?? null;
}

/**
 * The half that plain words are about which one half says, or which are said of it: that half, unless they name its counterpart alone.
 * `null` where they name what is neither: a module in slot 7 is none of the pair.
 */
function halfSpokenOf(
  { pair, half }: { readonly pair: string; readonly half: string },
  message: string,
): string | null {
  // What looks like the name of another pair may be anything, but at the begin, where what it is about stands.
  const begin = message.length - message.trimStart().length;
  const units = [...message.matchAll(unitName)].flatMap(({ 1: name = '', 2: named = '', index }) => {
    const isOwn = name.toLowerCase() === pair.toLowerCase();
    return isOwn ? [named] : index === begin ? [`${name}-${named}`] : [];
  });
  const inWords = [...message.matchAll(moduleWords)].map(([, named = '']) => named);
  const named = [halfSaid(message), ...inWords, ...units].flatMap((name) => name?.toUpperCase() ?? []);
  const own = half.toUpperCase();
  if (named.length === 0 || named.includes(own)) return half;
  const other = counterpart(own);
  return named.includes(other) ? other : null;
}

/**
 * Named groups and fixed parts of the rule come first, then the unit, then what the words themselves say. `null` where a value of
 * one half names none; `other` where it is about the other half, and which that is is not known.
 */
function subjectMeant(
  unit: Subject,
  said: MeaningRule,
  groups: Groups,
  message: string,
  place: Place,
): Subject | null | 'other' {
  const pair = groups.pair ?? unit.pair;
  const { signal, of } = said;
  const own = groups.half ?? said.half ?? unit.half;
  const named = said.role ?? roleNamed(groups.role ?? '') ?? unit.role;
  if (of === 'other') return otherThan({ pair, half: own, role: named }, signal);
  if (of === 'self') return addressed({ pair, half: own, role: named }, signal, said.subject);
  if (place === null && own !== null && !ofPair.has(signal)) {
    // A serial or a model may look like the name of a unit.
    const words = (groups.value ?? '') === '' ? message : message.replace(groups.value ?? '', ' ');
    const spoken = halfSpokenOf({ pair, half: own }, words);
    return spoken === null ? null : addressed({ pair, half: spoken, role: null }, signal, said.subject);
  }
  const half = own ?? halfSaid(message);
  const spoken = signal === 'role' ? null : roleNamed(roleWords.exec(message)?.[1] ?? '');
  const role = named ?? (half === null ? spoken : null);
  return addressed({ pair, half, role }, signal, said.subject);
}

const ofPair: ReadonlySet<Signal> = new Set<StateSignal | Happening>([...pairSignals, ...pairHappenings]);

/** The half that does not speak. */
function otherThan({ pair, half, role }: Subject, signal: Signal): Subject | 'other' {
  if (ofPair.has(signal)) return { pair, half: null, role: null };
  if (half !== null) return { pair, half, role: null, isOther: true };
  if (role === null) return 'other';
  return { pair, half: null, role: role === 'active' ? 'standby' : 'active' };
}
