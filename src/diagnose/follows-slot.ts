import type { Point } from '../vocabulary.ts';
import { type Cause, doubted } from './cause.ts';
import { linesBehind, sayTally, tally, tallyDecibans } from './tally.ts';

export const followsSlot: Cause = {
  meta: {
    id: 'follows-slot',
    title: 'The trouble follows the slot',
    kind: 'pattern',
    explains: 'A slot that is at fault with every module: its contacts, its supply, its cables.',
    shows: 'More than one serial fails in the half, and the same modules are ready elsewhere.',
    needs: [['serial']],
    next: 'Leave the modules alone: have the slot, its backplane, its supply and its two network cables checked by a qualified person while the other half runs.',
  },
  weigh(trouble) {
    const { facts, half, observations } = trouble;
    if (half === null) return doubted([]);
    const here = observations.filter((o) => o.facts === facts && o.half === half && o.serial !== null);
    const failing = new Set(here.filter((o) => !o.ready).map((o) => o.serial));
    if (failing.size < 2)
      return doubted([oneModule(half, new Set(here.map((o) => o.serial)).size, linesBehind(here, trouble))]);
    // Module by module: only those that failed here are looked for elsewhere.
    const inside = here.filter((o) => failing.has(o.serial));
    const elsewhere = observations.filter(
      (o) => (o.facts !== facts || o.half !== half) && failing.has(o.serial),
    );
    const point: Point = {
      statement: `With ${failing.size} modules half ${half} ${sayTally(tally(inside))}; the same modules elsewhere ${sayTally(tally(elsewhere))}.`,
      evidence: linesBehind([...inside, ...elsewhere], trouble),
    };
    const weight = tallyDecibans(tally(inside), tally(elsewhere), trouble);
    return weight > 0 ? { decibans: weight, for: [point], against: [] } : doubted([point]);
  },
};

function oneModule(half: string, modules: number, evidence: Point['evidence']): Point {
  const what = modules < 2 ? 'Only one module was seen in it' : 'Only one of its modules failed in it';
  return { statement: `${what}, half ${half}, so slot and module cannot be told apart by it.`, evidence };
}
