import type { PairFacts } from '../timeline/facts.ts';
import { type Identity, identityAt, type ModuleChange } from '../timeline/module-changes.ts';
import { track } from '../timeline/tracks.ts';
import type { NonEmpty, PlannedModule } from '../vocabulary.ts';
import { secondHalf } from './open-swap.ts';
import type { HalfInWork } from './procedure.ts';

const nothing = { model: null, serial: null, firmware: null };

/**
 * Halves that stopped reporting and say nothing yet, where only polls show that: out, or starting again. It is no swap until another
 * module says what it is, but what is waited for now is a module; or its identity, where its insertion was logged or noted.
 */
export function blanksInWork({ timeline }: PairFacts, from: number, at: number): readonly ModuleChange[] {
  return timeline.halves
    .flatMap((half) => {
      const moves = [...track(timeline, half, 'removed'), ...track(timeline, half, 'inserted')]
        .filter((move) => move.time <= at)
        .sort((a, b) => a.time - b.time);
      const [before, last] = [moves.at(-2), moves.at(-1)];
      const isOut = last?.signal === 'removed';
      const [removed, inserted] = isOut ? [last, null] : [before, last ?? null];
      if (removed?.signal !== 'removed' || removed.kind !== 'reading' || removed.time < from) return [];
      if (inserted !== null && !isBlank(identityAt(timeline, half, at))) return [];
      return [{ half, removed, inserted, before: nothing, found: nothing }];
    })
    .sort((a, b) => a.removed.time - b.removed.time);
}

function isBlank({ model, serial, firmware }: Identity): boolean {
  return model === null && serial === null && firmware === null;
}

/**
 * Changes of modules with what polls show to be gone since: nothing else tells of the second half being out. `to`: the end of the swap;
 * a half that stops reporting after it belongs to another day, unless it is the one that is still to be replaced.
 */
export function withBlanks(
  facts: PairFacts,
  changes: NonEmpty<ModuleChange>,
  plan: Readonly<Record<string, PlannedModule>>,
  { to, at }: { readonly to: number; readonly at: number },
): NonEmpty<ModuleChange> {
  const [first, ...rest] = changes;
  const isWanted = ({ half, removed }: ModuleChange): boolean =>
    secondHalf(worksOf(facts, changes, plan, removed.earliest), Object.keys(plan)) === half;
  const blanks = blanksInWork(facts, first.removed.time, at);
  return [first, ...rest, ...blanks.filter((b) => b.removed.time <= to || isWanted(b))];
}

/** The halves in work up to an instant, each with its last change, in the order of these. */
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
  const lasts = [...new Map(changes.map((change) => [change.half, change])).values()];
  const lastOf = lasts.sort((a, b) => a.removed.time - b.removed.time).map(work);
  const [first, ...rest] = lastOf;
  return first === undefined ? [work(changes[0])] : [first, ...rest];
}
