import { dashes } from '../charts/ink.ts';

/** So many as lines can be told apart, those with the highest figures; in the order given. */
export function mostOf<T>(all: readonly T[], figure: (one: T) => number): readonly T[] {
  const kept = [...all].sort((a, b) => figure(b) - figure(a)).slice(0, dashes.length);
  return all.filter((one) => kept.includes(one));
}
