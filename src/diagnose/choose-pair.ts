import type { PairFacts } from '../timeline/facts.ts';
import type { Trouble } from './cause.ts';

/** A pair and what is wrong with it; `trouble` is `null` for a healthy one. */
export interface Candidate {
  readonly facts: PairFacts;
  readonly trouble: Trouble | null;
}

const worst: readonly Trouble['kind'][] = ['not-ready', 'flapping', 'late-light', 'light-again', 'unknown'];

/** The pair that is worst now: without a ready partner before any other trouble, and of those the longest. */
export function worstOf(candidates: readonly Candidate[]): Candidate | null {
  const rank = ({ trouble }: Candidate): number =>
    trouble === null ? worst.length : worst.indexOf(trouble.kind);
  const lasting = ({ trouble }: Candidate): number => (trouble === null ? 0 : trouble.to - trouble.from);
  return candidates.toSorted((a, b) => rank(a) - rank(b) || lasting(b) - lasting(a))[0] ?? null;
}

/** Why that pair was taken, in one sentence. */
export function sayChoice({ facts, trouble }: Candidate, candidates: readonly Candidate[]): string {
  const { pair } = facts.timeline;
  const healthy = candidates.filter((c) => c.trouble === null).length;
  const all = candidates.length;
  if (trouble === null)
    return all === 1
      ? `${pair} is the only pair in the files.`
      : `No pair was named; all ${all} pairs in the files have a ready partner, and this is ${pair}.`;
  if (all === 1) return `${pair} is the only pair in the files.`;
  return `No pair was named: of ${all} pairs, ${healthy} healthy, ${pair} is the worst now: ${said[trouble.kind]}.`;
}

const said: Readonly<Record<Trouble['kind'], string>> = {
  'not-ready': 'no partner has stayed ready',
  flapping: 'its partner drops out again and again',
  'late-light': 'its light was not steady in time',
  'light-again': 'its light flashes again',
  unknown: 'it is not known whether it is ready',
};
