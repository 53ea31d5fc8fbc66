import type { PairFacts } from '../timeline/facts.ts';
import type { ModuleChange } from '../timeline/module-changes.ts';
import type { NonEmpty, PlannedModule } from '../vocabulary.ts';
import type { HalfInWork } from './procedure.ts';

/** The halves in work up to an instant, each with its last change, in the order of their first removals. */
export function worksOf(
  facts: PairFacts,
  changes: NonEmpty<ModuleChange>,
  plan: Readonly<Record<string, PlannedModule>>,
  at: number,
): NonEmpty<HalfInWork> {
  const work = (change: ModuleChange): HalfInWork => {
    const { half, inserted } = change;
    const bringUp =
      inserted === null
        ? undefined
        : facts.bringUps.findLast(
            (b) => b.half === half && b.start.time >= inserted.earliest && b.start.time <= at,
          );
    return { facts, change, bringUp: bringUp ?? null, plan: plan[half], at };
  };
  const lastOf = [...new Map(changes.map((change) => [change.half, change])).values()].map(work);
  const [first, ...rest] = lastOf;
  return first === undefined ? [work(changes[0])] : [first, ...rest];
}
