import { checkIds } from '../stories/truth.ts';
import type { Outcome, Violation } from './run-relations.ts';

const [mostSeeds, mostShown, mostLines] = [12, 3, 6];

/** What came of relations as text: counts, then for each its violations by what they are about, the first few in full. */
export function relationsText({ tried, violations }: Outcome): string {
  return [...tried]
    .flatMap(([id, count]) => {
      const own = violations.filter((v) => v.relation === id);
      return [
        `${id}: ${own.length} of ${count} changes`,
        ...groupLines(own),
        ...own.slice(0, mostShown).flatMap(shown),
      ];
    })
    .join('\n');
}

/** A violation is counted under the verdict and each check that it concerns, else under what of the answer it is. */
function groupLines(violations: readonly Violation[]): readonly string[] {
  const groups = new Map<string, number[]>();
  for (const { seed, differences } of violations) {
    const abouts = differences.map(({ about }) => about.replace(/^swap \d+ /, ''));
    const judged = abouts.filter((about) => about === 'verdict' || isCheck(about));
    const names = judged.length > 0 ? judged : abouts.slice(0, 1).map((about) => about.replace(/ \d.*$/, ''));
    for (const name of new Set(names)) groups.set(name, [...(groups.get(name) ?? []), seed]);
  }
  return [...groups]
    .sort(([, a], [, b]) => b.length - a.length)
    .map(
      ([name, seeds]) =>
        `  ${String(seeds.length).padStart(5)}  ${name}: ${seeds.slice(0, mostSeeds).join(' ')}`,
    );
}

function isCheck(about: string): boolean {
  return about.startsWith('check ') || checkIds.some((id) => id === about);
}

/** One violation for a person to read: what was done, and what was said before and after. */
function shown({ seed, dressing, what, differences }: Violation): readonly string[] {
  const more = differences.length - mostLines;
  return [
    `    seed ${seed}, ${dressing}, ${what}`,
    ...differences
      .slice(0, mostLines)
      .flatMap(({ about, before, after }) => [
        `      ${about}`,
        `        before  ${before}`,
        `        after   ${after}`,
      ]),
    ...(more > 0 ? [`      and ${more} more`] : []),
  ];
}
