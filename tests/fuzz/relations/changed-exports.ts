import { seeded } from '../../../samples/random.ts';
import type { Changed, Relation, Told } from '../../support/relations/relation.ts';
import type { Dressed } from '../../support/stories/dressing.ts';
import { swapStory } from '../../support/stories/swap-story.ts';
import { exports, shapes } from './exports.ts';
import { toldOf } from './told-stories.ts';

/** An export that the fuzzer changes. */
export interface Export {
  readonly told: Told;
  readonly dressed: Dressed;
  /** What happens, and how it is exported: `two swaps, poll-and-notes, in pieces`. */
  readonly shape: readonly [happening: string, kind: string, shape: string];
}

/** A change of an export, and what must be between the answers. */
export interface ChangedExport {
  readonly relation: Relation;
  readonly changed: Changed;
}

/** So many numbers, one after the other, change one export. */
export const changesOfOne = 16;
/** A larger export takes longer and shows no more. */
const mostCharacters = 250_000;
/** Each relation comes around ten times at least; one that gives nothing new so often has nothing new to give. */
const mostTurns = 150;

/** The export that a number changes, the same on every computer. */
export function exportOf(number: number): Export {
  const seed = Math.floor(number / changesOfOne);
  for (let turn = 0; ; turn += 1) {
    const drawn = drawExport(seed, seed * 1000 + turn);
    if (drawn !== null && charactersOf(drawn.dressed) <= mostCharacters) return drawn;
  }
}

function drawExport(seed: number, draw: number): Export | null {
  const random = seeded(draw ^ 0xf022);
  const { happening, told } = toldOf(seed, random);
  const base = exports[Math.floor(random() * exports.length)];
  const all = shapes((other) => swapStory(other).story);
  // Half of all as they are.
  const shape = random() < 0.5 ? all[0] : all[Math.floor(random() * all.length)];
  if (base === undefined || shape === undefined) throw new RangeError('There are no exports.');
  const dressed = shape.shape(base, told.story, draw);
  return dressed === null ? null : { told, dressed, shape: [happening.id, base.id, shape.id] };
}

function charactersOf({ files }: Dressed): number {
  return Object.values(files).reduce((sum, text) => sum + text.length, 0);
}

/**
 * What the numbers of an export do to it, in their order, no two alike: the relations in turn, those that cannot be tried on it
 * left out, until there are enough.
 */
export function* changesOf(
  { told, dressed }: Export,
  relations: readonly Relation[],
): Generator<ChangedExport, void> {
  const random = seeded(told.seed ^ 0xc4a6);
  const usable = relations.filter(({ kind }) => kind === 'same' || dressed.isBeyondSources !== true);
  const done = new Set<string>();
  for (let turn = 0; done.size < changesOfOne; turn += 1) {
    if (turn > mostTurns) throw new RangeError(`Too few changes of the export of seed ${told.seed}.`);
    const relation = usable[turn % usable.length];
    const all = relation?.change(dressed, told, random) ?? [];
    const changed = all[Math.floor(random() * all.length)];
    if (relation === undefined || changed === undefined || done.has(`${relation.id} ${changed.what}`))
      continue;
    done.add(`${relation.id} ${changed.what}`);
    yield { relation, changed };
  }
}

/** The change of a number. */
export function changeOf(number: number, made: Export, relations: readonly Relation[]): ChangedExport {
  const change = [...changesOf(made, relations)][number % changesOfOne];
  if (change === undefined) throw new RangeError(`There is no change ${number}.`);
  return change;
}
