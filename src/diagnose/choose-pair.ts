import type { PairFacts } from '../timeline/facts.ts';
import type { Attention, AttentionKind } from '../vocabulary.ts';
import type { Trouble } from './cause.ts';

/** A pair and what is wrong with it; `trouble` is `null` for a healthy one. */
export interface Candidate {
  readonly facts: PairFacts;
  readonly trouble: Trouble | null;
}

const said: Readonly<Record<Trouble['kind'], string>> = {
  'not-ready': 'no partner has stayed ready',
  flapping: 'its partner drops out again and again',
  'late-light': 'its light was not steady in time',
  'light-again': 'its light flashes again',
  unknown: 'it is not known whether it is ready',
};

/** The pair to diagnose: the first that has trouble in the order of attention; else the first. `null` where there is none. */
export function worstOf(ranked: readonly Attention[]): string | null {
  return (ranked.find((a) => troubleIn(a) !== null) ?? ranked[0])?.pair ?? null;
}

/** Why that pair was taken, in one sentence; `ranked` are all pairs. */
export function sayChoice(pair: string, ranked: readonly Attention[]): string {
  const all = ranked.length;
  if (all === 1) return `${pair} is the only pair in the files.`;
  const own = ranked.find((a) => a.pair === pair);
  const kind = own === undefined ? null : troubleIn(own);
  if (kind === null)
    return `No pair was named; all ${all} pairs in the files have a ready partner, and this is ${pair}.`;
  const healthy = ranked.filter((a) => troubleIn(a) === null).length;
  return `No pair was named: of ${all} pairs, ${healthy} healthy, ${pair} is the worst now: ${said[kind]}.`;
}

function troubleIn({ reasons }: Attention): Trouble['kind'] | null {
  const isTrouble = (kind: AttentionKind): kind is Trouble['kind'] => Object.hasOwn(said, kind);
  return reasons.map(({ kind }) => kind).find(isTrouble) ?? null;
}
