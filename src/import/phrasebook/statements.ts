import type { Signal, Subject } from '../../vocabulary.ts';
import { isDoubtful } from './doubts.ts';
import { isMeant, type Meaning, meaningOf, type Understood } from './meanings.ts';
import type { MessageRules } from './message-rules.ts';
import { isContrary, isTakenBack, remarksOf } from './remarks.ts';
import type { Matched } from './rule-finder.ts';
import { namesHalf } from './spoken-subjects.ts';

/** A message that a rule of plain English fits, and what it means by that rule. */
export interface Statement {
  readonly found: Matched;
  readonly meant: readonly Understood[];
  readonly from: Subject;
  readonly message: string;
  /** The row's unit as the log names it. */
  readonly unit: string;
  /** The condition that it names no longer stands. */
  readonly isOff: boolean;
}

/**
 * What a message in plain English says with all that is remarked in it: nothing that is known where a remark takes it back; and each
 * statement of several, "link a down, link b up".
 */
export function withRemarks(
  rules: MessageRules,
  { found, meant, from, message, unit, isOff }: Statement,
): Meaning {
  const remarks = remarksOf(message);
  if (isTakenBack(remarks, meant)) return 'message';
  // What follows a trouble is its reason.
  if (isOff || meant.some(({ signal }) => reasoned.has(signal))) return meant;
  const others = remarks.behind.flatMap((part) => {
    const other = rules.find(part, unit);
    if (typeof other === 'string' || !isSure(other, part)) return [];
    const said = meaningOf(from, other, wordsAbout(other, part, message), false);
    return isMeant(said) ? said : [];
  });
  if (others.length === 0) return meant;
  const first = meaningOf(from, found, wordsAbout(found, remarks.core, message), false);
  const all = [...(isMeant(first) ? first : []), ...others];
  return !isMeant(first) || isContrary(all) ? 'message' : all;
}

/** Whether plain English says it without a doubt. */
export function isSure({ rule }: Matched, message: string): boolean {
  return rule.place === null && !rule.means.some(({ signal }) => isDoubtful(signal, message));
}

const reasoned: ReadonlySet<Signal> = new Set<Signal>(['fault', 'sync-failed']);

/** The words that say whom a part of a message is about: its own where they name a half, else those of all. */
function wordsAbout({ groups: { value = '' } }: Matched, part: string, message: string): string {
  return namesHalf(value === '' ? part : part.replace(value, ' ')) ? part : message;
}
