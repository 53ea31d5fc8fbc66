import { program } from '../../support/relations/command.ts';
import { type Difference, differences } from '../../support/relations/compare.ts';
import { asItIs, reduce } from '../../support/relations/reduce.ts';
import type { View } from '../../support/relations/relation.ts';
import { relations } from '../../support/relations/relations.ts';
import type { Verified } from '../../support/verify-files.ts';
import { changeOf, exportOf } from './changed-exports.ts';
import type { Related } from './fuzz-relations.ts';
import { keepFiles } from './keep-files.ts';

const mostLines = 4;

/** What the counts say, a line each, what failed last. */
export function relatedText({ changed, byRelation, byShape, failures }: Related): string {
  const counted = (counts: Readonly<Record<string, number>>): readonly string[] =>
    Object.entries(counts).map(([name, count]) => {
      const failed = failures.filter(
        ({ relation, shape }) => relation === name || shape.split(', ').includes(name),
      );
      return `  ${name.padEnd(26)} ${String(count).padStart(7)} changed ${String(failed.length).padStart(5)} failed`;
    });
  return [
    ...counted(byRelation),
    '',
    ...counted(byShape),
    ...failures.flatMap(({ number, relation, shape, what, differences: found }) => [
      `FAILED ${number} (${relation}; ${shape}): ${what}`,
      ...found.slice(0, mostLines).flatMap(differenceLines),
    ]),
    `${changed} changed exports, ${failures.length} failed`,
  ].join('\n');
}

function differenceLines({ about, before, after }: Difference): readonly string[] {
  return [`    ${about}`, `      before  ${before}`, `      after   ${after}`];
}

/** One number once more: the relation, what was changed, the files, which are left in out/fuzz, and the answers before and after. */
export async function relatedAgain(number: number): Promise<string> {
  const made = exportOf(number);
  const { relation, changed } = changeOf(number, made, relations);
  const { pair } = made.told.story;
  const [before, after] = [await program(made.dressed), await program(changed.given)];
  const found = differences(relation, pair, before, after, changed);
  const folder = keepFiles(number, made.dressed, changed.given);
  return [
    `${folder}: ${made.shape.join(', ')}, seed ${made.told.seed}, pair ${pair}`,
    `relation: ${relation.id} (${relation.kind === 'same' ? 'the answer may not change' : 'the answer may only become weaker'})`,
    `change: ${changed.what}`,
    `files before: ${Object.keys(made.dressed.files).join(', ')}`,
    `files after: ${Object.keys(changed.given.files).join(', ')}`,
    'answer before:',
    ...answerLines(before, pair, asItIs),
    'answer after:',
    ...answerLines(after, pair, changed.view ?? asItIs),
    ...(found.length === 0 ? ['The relation holds.'] : ['The relation is broken:']),
    ...found.flatMap(differenceLines),
  ].join('\n');
}

function answerLines(verified: Verified, pair: string, view: View): readonly string[] {
  const lines = [...reduce(verified, pair, view)].filter(([name]) => !name.startsWith('event '));
  return lines.map(([name, said]) => `  ${name}: ${said}`);
}
