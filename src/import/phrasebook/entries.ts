import { type Signal, type Subject, stateSignals } from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import { type Groups, type PatternList, patternList } from './patterns.ts';
import { isIgnored, type MessageRule, type Phrasebook } from './phrasebook-rules.ts';
import { addressed, roleNamed, subjectOf } from './subjects.ts';
import { valueMeant } from './values.ts';

export interface Understood {
  readonly subject: Subject;
  readonly signal: Signal;
  readonly value: string | null;
}

/** What a message means; that it is known to mean nothing; or what of it is not known. */
export type Meaning = Understood | 'ignored' | 'unit' | 'message';

/** Turns messages into what they mean. */
export interface EntryReader {
  read(unit: Subject | null, message: string): Meaning;
  /** What a technician's line means; at least a note. */
  readNote(pair: Subject, text: string): Understood;
}

interface Matched {
  readonly rule: MessageRule;
  readonly groups: Groups;
}

const mostCached = 4096;
/** "slot B", "Half 2"; not "half a minute", nor "in place of". */
const halfWords =
  /\b(?:[Ss]lot|SLOT)\s+([A-Za-z]|\d{1,2})\b|\b(?:[Hh]alf|HALF|[Pp]lace|PLACE)\s+([A-Z]|\d{1,2})\b/;
const roleWords = /\b(standby|stby|sby|active)\b/i;
/** "not removed yet", "before we switch over": what was not done, or not yet. */
const undone =
  /\b(?:not|never|cannot|can't|didn't|won't|will|should|would|could|before|until|unless|if|to be)\b[^,;.]*\b(?:pull|remov|t[ao]k|withdr|put|fit|insert|seat|switch|(?:re)?flash)/i;

export function entryReader(phrasebook: Phrasebook): EntryReader {
  const cache = new Map<string, Matched | 'ignored' | 'unknown'>();
  const firstOwn = ruleFinder(() => phrasebook.messages);
  const firstPlain = ruleFinder(phrasebook.plainMessages);
  const firstNote = ruleFinder(phrasebook.notes);
  const look = (message: string): Matched | 'ignored' | 'unknown' => {
    const known = cache.get(message);
    if (known !== undefined) return known;
    const found =
      firstOwn(message) ?? (isIgnored(phrasebook, message) ? 'ignored' : (firstPlain(message) ?? 'unknown'));
    if (cache.size < mostCached) cache.set(detached(message), found);
    return found;
  };
  return {
    read(unit, message) {
      const found = look(message);
      if (found === 'ignored') return found;
      if (found === 'unknown') return 'message';
      const from = unitNamed(phrasebook, found.groups) ?? unit;
      return from === null ? 'unit' : (meaning(from, found, message) ?? 'message');
    },
    readNote(pair, text) {
      const found = firstNote(text);
      const isOwn = phrasebook.messages.some((r) => r.pattern.source === found?.rule.pattern.source);
      const isDone = found !== undefined && (isOwn || !undone.test(text));
      const meant = isDone ? meaning(pair, found, text) : undefined;
      return (
        meant ?? {
          subject: { pair: pair.pair, half: null, role: null },
          signal: 'note',
          value: detached(text),
        }
      );
    },
  };
}

/** The first rule that fits; what it takes to find it is made when first needed. */
function ruleFinder(rules: () => readonly MessageRule[]): (text: string) => Matched | undefined {
  let list: PatternList | undefined;
  return (text) => {
    list ??= listOf(rules());
    const found = list.first(text);
    const rule = found === null ? undefined : rules()[found.index];
    return found === null || rule === undefined ? undefined : { rule, groups: found.groups };
  };
}

/** The automaton of rules that do not change is the same for every file, and takes tens of milliseconds to make. */
const lists = new WeakMap<readonly MessageRule[], PatternList>();

function listOf(rules: readonly MessageRule[]): PatternList {
  const known = lists.get(rules);
  if (known !== undefined) return known;
  const made = patternList(rules.map((r) => r.pattern));
  lists.set(rules, made);
  return made;
}

function unitNamed(phrasebook: Phrasebook, groups: Groups): Subject | null {
  const unit = groups.unit;
  return unit === undefined ? null : subjectOf(phrasebook, { unit, half: '', role: '' });
}

function meaning(unit: Subject, { rule, groups }: Matched, message: string): Understood | undefined {
  const { signal } = rule;
  const subject = subjectMeant(unit, rule, groups, message);
  if (subject === undefined) return undefined;
  const text = rule.value ?? groups.value ?? '';
  if (!stateSignals.some((s) => s === signal)) {
    const said = signal === 'note' || signal === 'fault' ? (text === '' ? message : text) : text;
    return { subject, signal, value: said === '' ? null : detached(said) };
  }
  const value = rule.value ?? valueMeant(signal, rule.values, text);
  return value === undefined || value === '' ? undefined : { subject, signal, value: detached(value) };
}

function halfSaid(message: string): string | null {
  const found = halfWords.exec(message);
  return (found?.[1] ?? found?.[2])?.toUpperCase() ?? null;
}

/** Named groups and fixed parts of the rule come first, then the unit, then what the words themselves say. */
function subjectMeant(
  unit: Subject,
  rule: MessageRule,
  groups: Groups,
  message: string,
): Subject | undefined {
  const pair = groups.pair ?? unit.pair;
  const half = groups.half ?? rule.half ?? unit.half ?? halfSaid(message);
  const named = rule.role ?? roleNamed(groups.role ?? '') ?? unit.role;
  const spoken = rule.signal === 'role' ? null : roleNamed(roleWords.exec(message)?.[1] ?? '');
  const role = named ?? (half === null ? spoken : null);
  return addressed({ pair, half, role }, rule.signal, rule.subject) ?? undefined;
}
