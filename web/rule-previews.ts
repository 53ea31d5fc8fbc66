import type { LessonPreview } from '../src/pipeline.ts';
import type { NamedRule } from './teach-rules.ts';

/** What a rule would do, in words; a rule that is not of use is not applied. */
export interface RulePreview {
  readonly isOfUse: boolean;
  readonly says: string;
  readonly lines: LessonPreview['lines'];
}

/** What each rule would do, from what each of their lessons would, in the same order. */
export function previewsOf(
  rules: readonly NamedRule[],
  previews: readonly LessonPreview[],
): ReadonlyMap<string, RulePreview> {
  let at = 0;
  return new Map(
    rules.map(({ key, lessons }) => {
      const own = previews.slice(at, at + lessons.length);
      at += lessons.length;
      return [key, previewOf(own)];
    }),
  );
}

function previewOf(own: readonly LessonPreview[]): RulePreview {
  const lines = own.flatMap((p) => p.lines);
  const problem = own.find((p) => p.problem !== null)?.problem;
  if (problem !== undefined && problem !== null)
    return { isOfUse: false, says: `Not applied: ${plainly(problem.what)} ${problem.fix}`, lines };
  const judged = own.flatMap(({ fits }) => (fits === null ? [] : [fits]));
  const fits = judged.reduce((sum, n) => Math.max(sum, n), 0);
  if (judged.length > 0 && fits === 0)
    return { isOfUse: false, says: 'Not applied: this pattern matches no row. Change the pattern.', lines };
  if (own.length > 0 && own.every((p) => p.isBehind))
    return {
      isOfUse: false,
      says: 'Not applied: an earlier rule of the phrasebook takes all rows it matches. Change that rule.',
      lines,
    };
  return { isOfUse: true, says: judged.length === 0 ? '' : `Matches ${sayRows(fits)}.`, lines };
}

/** `messages[0].when is not a pattern`: the place is a key of the phrasebook, which the page need not show. */
function plainly(what: string): string {
  return what.replace(/^[a-z]+(?:\[\d+\])?(?:\.[a-z]+)? /, 'this ');
}

function sayRows(count: number): string {
  return count === 1 ? 'one row' : `${count.toLocaleString('en')} rows`;
}

/** The lessons of those rules that are of use, and how many rules those are; a rule that was not looked at yet is none. */
export function usefulRules(
  rules: readonly NamedRule[],
  previews: ReadonlyMap<string, RulePreview>,
): readonly NamedRule[] {
  return rules.filter(({ key }) => previews.get(key)?.isOfUse === true);
}
