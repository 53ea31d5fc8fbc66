import { type Groups, type PatternList, patternList } from './patterns.ts';
import { type MessageRule, noteUsed, type UsedRules } from './phrasebook-rules.ts';

/** A rule that fits a message, and what its groups took. */
export interface Matched {
  readonly rule: MessageRule;
  readonly groups: Groups;
}

/** Finds rules for messages; what it takes to find them is made when first needed. */
export interface RuleFinder {
  /** The first that fits a text of that unit; it was of use. */
  first(text: string, unit: string): Matched | undefined;
  /** False only if all texts of that shape, of one unit, are fitted by the same first rule. */
  digitsMatter(shape: string): boolean;
}

/** A finder among rules, which may be made when it is first asked. */
export function ruleFinder(rules: () => readonly MessageRule[], used: UsedRules): RuleFinder {
  let list: PatternList | undefined;
  const listNow = (): PatternList => {
    list ??= listOf(rules());
    return list;
  };
  return {
    first(text, unit) {
      const all = rules();
      const isOf = (index: number): boolean => {
        const pattern = all[index]?.only.unit;
        return pattern === undefined || pattern.match(unit) !== null;
      };
      const found = listNow().first(text, isOf);
      const rule = found === null ? undefined : all[found.index];
      if (found === null || rule === undefined) return undefined;
      noteUsed(used, rule.place);
      return { rule, groups: found.groups };
    },
    digitsMatter: (shape) => listNow().digitsMatter(shape),
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
