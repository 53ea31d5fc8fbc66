import { groupBy } from '../timeline/groups.ts';

/**
 * Names that look like one thing written in several ways, as `6.4.1`, `V6.4.1` and `06.04.01`: each list in order, of two
 * at least. They stay apart; a person says in the phrasebook whether they are one.
 */
export function alikeNames(names: readonly string[]): readonly (readonly string[])[] {
  const once = [...new Set(names)].sort();
  return [...groupBy(once, bareOf).values()].filter((alike) => alike.length > 1);
}

/** Without case, blanks, what comes before the first digit of a number, and zeros that lead. */
function bareOf(name: string): string {
  const small = name.toLowerCase().replaceAll(/[\s_]/g, '');
  const number = /^(?:firmware|release|version|rev|ver|fw|v|r)?[.:]?(\d.*)$/.exec(small)?.[1];
  return (number ?? small).replaceAll(/(^|\D)0+(?=\d)/g, '$1');
}
