import { seeded } from '../../../samples/random.ts';
import type { Dressed } from '../stories/dressing.ts';
import { dress } from '../stories/dressings.ts';
import { swapStory } from '../stories/swap-story.ts';
import { type Difference, differences } from './compare.ts';
import type { Answerer, Relation } from './relation.ts';

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

/** Which stories are tried, and how they are dressed. */
export interface Stories {
  readonly count: number;
  readonly first?: number;
  /** At most so many changes of each relation and story, drawn by chance; 1 unless said. */
  readonly changes?: number;
  dress?(seed: number): Dressed;
}

/** Runs relations over stories: each answer to the files as they are is asked for once. */
export async function runRelations(
  relations: readonly Relation[],
  { count, first = 0, changes = 1, dress: dressed = dressSeed }: Stories,
  answer: Answerer,
): Promise<Outcome> {
  const tried = new Map(relations.map(({ id }) => [id, 0]));
  const violations: Violation[] = [];
  for (let seed = first; seed < first + count; seed += 1) {
    const told = swapStory(seed);
    const before = dressed(seed);
    const asTold = await answer(before);
    for (const [index, relation] of relations.entries()) {
      const random = seeded(seed * 1000 + index);
      const all = relation.change(before, told, random);
      for (const changed of drawn(all, changes, random)) {
        tried.set(relation.id, (tried.get(relation.id) ?? 0) + 1);
        const found = differences(relation, told.story.pair, asTold, await answer(changed.given), changed);
        if (found.length === 0) continue;
        const { what } = changed;
        violations.push({ relation: relation.id, seed, dressing: before.id, what, differences: found });
      }
    }
  }
  return { tried, violations };
}

function dressSeed(seed: number): Dressed {
  return dress(swapStory(seed).story, seed);
}

function drawn<T>(all: readonly T[], most: number, random: () => number): readonly T[] {
  const left = [...all];
  while (left.length > most) left.splice(Math.floor(random() * left.length), 1);
  return left;
}
