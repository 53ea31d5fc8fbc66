import { type Difference, differences } from '../../support/relations/compare.ts';
import type { Answerer, Given } from '../../support/relations/relation.ts';
import { relations } from '../../support/relations/relations.ts';
import type { Verified } from '../../support/verify-files.ts';
import { changesOf, changesOfOne, exportOf } from './changed-exports.ts';

/** One changed export whose answer is not what its relation asks for. */
export interface Failure {
  readonly number: number;
  readonly relation: string;
  readonly shape: string;
  /** What was done to the files. */
  readonly what: string;
  readonly differences: readonly Difference[];
}

/** What came of some changed exports: how many of each relation, of each part of a shape, and what failed. */
export interface Related {
  readonly changed: number;
  readonly byRelation: Readonly<Record<string, number>>;
  readonly byShape: Readonly<Record<string, number>>;
  readonly failures: readonly Failure[];
}

/**
 * Changes the exports of `count` numbers from `first` on, and compares the answers before and after. What fails is
 * given to `keep`, its files before and after. Throws what the program throws over an export that is not changed.
 */
export async function fuzzRelations(
  count: number,
  first: number,
  answer: Answerer,
  keep: (number: number, before: Given, after: Given) => void,
): Promise<Related> {
  const [byRelation, byShape] = [new Map<string, number>(), new Map<string, number>()];
  const failures: Failure[] = [];
  const end = first + count;
  for (let begin = first; begin < end; begin = nextExport(begin)) {
    const made = exportOf(begin);
    const before = await answer(made.dressed);
    for (const [index, { relation, changed }] of [...changesOf(made, relations)].entries()) {
      const number = nextExport(begin) - changesOfOne + index;
      if (number < begin || number >= end) continue;
      const found = await broken(answer, changed.given, (after) =>
        differences(relation, made.told.story.pair, before, after, changed),
      );
      for (const part of new Set(made.shape)) add(byShape, part);
      add(byRelation, relation.id);
      if (found.length === 0) continue;
      const shape = made.shape.join(', ');
      failures.push({ number, relation: relation.id, shape, what: changed.what, differences: found });
      keep(number, made.dressed, changed.given);
    }
  }
  return {
    changed: count,
    byRelation: Object.fromEntries(byRelation),
    byShape: Object.fromEntries(byShape),
    failures,
  };
}

/** What a change broke; where the program does not answer at all, its error. */
async function broken(
  answer: Answerer,
  given: Given,
  compare: (after: Verified) => readonly Difference[],
): Promise<readonly Difference[]> {
  try {
    return compare(await answer(given));
  } catch (error) {
    const after = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return [{ about: 'error', before: 'an answer', after }];
  }
}

/** The first number that changes another export. */
function nextExport(number: number): number {
  return (Math.floor(number / changesOfOne) + 1) * changesOfOne;
}

function add(counts: Map<string, number>, name: string): void {
  counts.set(name, (counts.get(name) ?? 0) + 1);
}

/** What two runs found, as if they were one. */
export function bothRelated(one: Related, other: Related): Related {
  return {
    changed: one.changed + other.changed,
    byRelation: summed(one.byRelation, other.byRelation),
    byShape: summed(one.byShape, other.byShape),
    failures: [...one.failures, ...other.failures],
  };
}

type Counts = Readonly<Record<string, number>>;

function summed(one: Counts, other: Counts): Counts {
  const names = [...new Set([...Object.keys(one), ...Object.keys(other)])];
  return Object.fromEntries(names.map((name) => [name, (one[name] ?? 0) + (other[name] ?? 0)]));
}
