import { detached } from '../bytes/decode.ts';
import { digitShape } from './digit-shapes.ts';
import { isIgnored, type MessageRule, type Phrasebook, type UsedRules } from './phrasebook-rules.ts';
import { wordsApart } from './plain-parameters.ts';
import { type Matched, ruleFinder } from './rule-finder.ts';

/** No rule fits; it may be a message to ignore. */
export type NoMatch = 'ignored' | 'unknown';

/** The rules for messages of one file: its own first, then what the site ignores, then plain English. */
export interface MessageRules {
  /** What a message of that unit is read by; a message that was found before, or one of its shape, is not looked up again. */
  find(message: string, unit: string): Matched | NoMatch;
  /** False only if no rule fits a message that was found, and the same was found for all of its shape in rows of that unit. */
  digitsMatter(message: string, unit: string): boolean;
}

const mostKnown = 4096;
/** Begins with a name whose words are joined: `partnerReady`. */
const joined = /^[A-Za-z][a-z]+(?:[A-Z][a-z]*)+(?=$|[\s:=])/;

/** The rules for messages of a file that has those rules of its own. */
export function messageRules(
  phrasebook: Phrasebook,
  own: readonly MessageRule[],
  used: UsedRules,
): MessageRules {
  const ownRules = ruleFinder(() => own, used);
  const plainRules = ruleFinder(phrasebook.plainMessages, used);
  const dependsOnUnit = own.some(({ only }) => only.unit !== undefined);
  const keyOf = (text: string, unit: string): string => (dependsOnUnit ? `${unit}\n${text}` : text);
  const byText = new Map<string, Matched | NoMatch>();
  const byShape = new Map<string, NoMatch>();
  const firstPlain = (message: string, unit: string): Matched | undefined => {
    for (const form of formsOf(message)) {
      const found = plainRules.first(form, unit);
      if (found !== undefined) return found;
    }
    return undefined;
  };
  const look = (message: string, unit: string): Matched | NoMatch =>
    ownRules.first(message, unit) ??
    (isIgnored(phrasebook, message, used) ? 'ignored' : (firstPlain(message, unit) ?? 'unknown'));
  const isOfShape = (shape: string): boolean =>
    shape.includes('0') &&
    !finders.some(({ digitsMatter }) => formsOf(shape).some((form) => digitsMatter(form)));
  const finders = [ownRules, plainRules, phrasebook.ignore];
  return {
    find(message, unit) {
      const text = keyOf(message, unit);
      const known = byText.get(text) ?? byShape.get(keyOf(digitShape(message), unit));
      if (known !== undefined) return known;
      const found = look(message, unit);
      const shape = digitShape(message);
      if (typeof found === 'string' && byShape.size < mostKnown && isOfShape(shape))
        byShape.set(detached(keyOf(shape, unit)), found);
      else if (byText.size < mostKnown) byText.set(detached(text), found);
      return found;
    },
    digitsMatter: (message, unit) => !byShape.has(keyOf(digitShape(message), unit)),
  };
}

/** What plain English is looked for in: a message, of several lines the first (it says what happened, common practice, no source), and both with joined words apart. */
function formsOf(message: string): readonly string[] {
  const end = message.search(/[\r\n]/);
  const whole = end > 0 ? [message, message.slice(0, end).trimEnd()] : [message];
  return [...whole, ...whole.filter((form) => joined.test(form)).map(wordsApart)];
}
