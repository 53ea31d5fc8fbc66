import type { Point } from '../vocabulary.ts';
import { type Cause, capped, doubted } from './cause.ts';
import type { Observation } from './observations.ts';
import { lastWasReady, linesBehind, sayTally, tally, tallyDecibans } from './tally.ts';

/**
 * Least evidence with which a good engineer would name it: the swap test. Two modules failed in the half, at least once each, since
 * the trouble began, none was ready in it since, and each of them was ready elsewhere, its last time there included. Short of that
 * the counts alone weigh, by Fisher's exact test. What the slot did before the trouble does not count. Common practice, no source.
 */
export const followsSlot: Cause = {
  meta: {
    id: 'follows-slot',
    title: 'The trouble follows the slot',
    kind: 'place',
    explains: 'A faulty slot, with any module: its contacts, supply or cables.',
    shows: 'More than one serial fails in the half, and the same modules are ready elsewhere.',
    needs: [['serial']],
    next: 'Leave the modules alone: have the slot, its backplane, its supply and its two network cables checked by a qualified person while the other half runs. All of them failed beside the same partner: have its events read as well.',
  },
  weigh(trouble) {
    const { facts, half, observations, limits } = trouble;
    if (half === null) return doubted([]);
    const seen = observations.filter((o) => o.facts === facts && o.half === half && o.serial !== null);
    const here = seen.filter((o) => (o.ready ? o.at : o.to) >= trouble.from);
    const failing = new Set(here.filter((o) => !o.ready).map((o) => o.serial));
    if (failing.size < 2)
      return doubted([oneModule(half, new Set(seen.map((o) => o.serial)).size, linesBehind(seen, trouble))]);
    // Module by module: only those that failed here are looked for elsewhere.
    const inside = here.filter((o) => failing.has(o.serial));
    const elsewhere = observations.filter(
      (o) => (o.facts !== facts || o.half !== half) && failing.has(o.serial),
    );
    const point: Point = {
      statement: `With ${failing.size} modules half ${half} ${sayTally(tally(inside))}; the same modules elsewhere ${sayTally(tally(elsewhere))}.`,
      evidence: linesBehind([...inside, ...elsewhere], trouble),
    };
    const tested = isSwapTested(here, elsewhere, [...failing]) ? limits.swapTestDecibans : 0;
    const weight = tested + tallyDecibans(tally(inside), tally(elsewhere), trouble);
    return weight > 0 ? { decibans: capped(weight, limits), for: [point], against: [] } : doubted([point]);
  },
};

/** No module was ready in it, and each that failed in it was ready elsewhere when last tried there. */
function isSwapTested(
  here: readonly Observation[],
  elsewhere: readonly Observation[],
  failing: readonly (string | null)[],
): boolean {
  return (
    here.every((o) => !o.ready) &&
    failing.every((serial) => lastWasReady(elsewhere.filter((o) => o.serial === serial)))
  );
}

function oneModule(half: string, modules: number, evidence: Point['evidence']): Point {
  const what = modules < 2 ? 'Only one module was seen in it' : 'Only one of its modules failed in it';
  return { statement: `${what}, half ${half}, so slot and module cannot be separated by it.`, evidence };
}
