import {
  counterpart,
  type Happening,
  pairHappenings,
  pairSignals,
  type Signal,
  type StateSignal,
  type Subject,
} from '../../vocabulary.ts';
import type { Groups } from './patterns.ts';
import type { MeaningRule, Place } from './phrasebook-rules.ts';
import { addressed, roleNamed } from './subjects.ts';

/** What a message calls a half besides, or any other module: "module B", "Controller 2". */
const moduleWords =
  /\b(?:module|MODULE|Module|controller|CONTROLLER|Controller|node|NODE|Node|side|SIDE|Side)\s+([A-Z]|\d{1,2})\b/g;
/** The name of a half as a unit is written, "RO1-B". */
const unitName = /(?<![\w-])([A-Za-z][A-Za-z_]*\d+)[-/._]([A-Za-z]|\d{1,2})(?![\w-])/g;
/** "slot B", "Half 2", "pulled B", "removed from B"; not "half a minute", nor "in place of", nor "pulled A new one". */
const halfWords =
  /\b(?:[Ss]lot|SLOT)\s+([A-Za-z]|\d{1,2})\b|\b(?:[Hh]alf|HALF|[Pp]lace|PLACE)\s+([A-Z]|\d{1,2})\b|\b(?:[Pp]ulled|[Rr]emoved|[Ww]ithdrew|[Tt]ook out|[Ff]itted|[Ii]nserted|[Rr]eseated|[Ss]eated|[Pp]ut in|[Rr]eflashed|[Ff]lashed)\s+(?:(?:the|old|new|standby|active|module|controller)\s+)*([B-Z]\b|A\b(?!\s+\w))|\b(?:on|of|at|from|in)\s+([A-Z])(?=\s*(?:$|[.,;:)!]))/;
const roleWords = /\b(standby|stby|sby|active)\b/i;
/** Whether words name a half, of whatever pair. */
export function namesHalf(words: string): boolean {
  return halfSaid(words) !== null || words.search(moduleWords) >= 0 || words.search(unitName) >= 0;
}

/** The half that the words of a message name, "slot B"; `null` where they name none. */
export function halfSaid(message: string): string | null {
  const found = halfWords.exec(message);
  return (found?.[1] ?? found?.[2] ?? found?.[3] ?? found?.[4])?.toUpperCase() ?? null;
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
export function subjectMeant(
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
