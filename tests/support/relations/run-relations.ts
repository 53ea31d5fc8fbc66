import { seeded } from '../../../samples/random.ts';
import type { Dressed } from '../stories/dressing.ts';
import { dress } from '../stories/dressings.ts';
import { swapStory } from '../stories/swap-story.ts';
import { type Difference, differences } from './compare.ts';
import type { Answerer, Relation, Told } from './relation.ts';

/** One answer that changed as it may not. */
export interface Violation {
  readonly relation: string;
  readonly seed: number;
  readonly dressing: string;
  /** What was done to the files. */
  readonly what: string;
  readonly differences: readonly Difference[];
}

/** What came of some relations over some stories. */
export interface Outcome {
  /** By relation: how many changes were tried. */
  readonly tried: ReadonlyMap<string, number>;
  readonly violations: readonly Violation[];
}

/** A story in a dressing. */
export interface Case {
  readonly told: Told;
  readonly dressed: Dressed;
}

/** The stories of so many seeds, each told when it is asked for. */
export function* casesOf(count: number, first: number): Generator<Case> {
  for (let seed = first; seed < first + count; seed += 1) {
    const { story } = swapStory(seed);
    yield { told: { seed, story, swaps: [story] }, dressed: dress(story, seed) };
  }
}

/**
 * Runs relations over stories, at most so many `changes` of each relation and story, drawn by chance. Each answer to the files
 * as they are is asked for once.
 */
export async function runRelations(
  relations: readonly Relation[],
  cases: Iterable<Case>,
  answer: Answerer,
  changes = 1,
): Promise<Outcome> {
  const tried = new Map(relations.map(({ id }) => [id, 0]));
  const violations: Violation[] = [];
  for (const { told, dressed } of cases) {
    const { seed, story } = told;
    const before = await answer(dressed);
    for (const [index, relation] of relations.entries()) {
      const random = seeded(seed * 1000 + index);
      for (const changed of drawn(relation.change(dressed, told, random), changes, random)) {
        tried.set(relation.id, (tried.get(relation.id) ?? 0) + 1);
        const after = await answer(changed.given);
        const found = differences(relation, story.pair, before, after, changed);
        const { what } = changed;
        if (found.length > 0)
          violations.push({ relation: relation.id, seed, dressing: dressed.id, what, differences: found });
      }
    }
  }
  return { tried, violations };
}

function drawn<T>(all: readonly T[], most: number, random: () => number): readonly T[] {
  const left = [...all];
  while (left.length > most) left.splice(Math.floor(random() * left.length), 1);
  return left;
}
