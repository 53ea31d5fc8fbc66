import { hypergeometric } from './distributions.ts';

/** A table of two rows and two columns of counts. */
export interface TwoByTwo {
  readonly first: readonly [number, number];
  readonly second: readonly [number, number];
}

/**
 * Probability that the first row holds so many of the first column, or more, if rows and columns had nothing to do with
 * each other: Fisher's exact test, one-sided (greater). 1 where a row or a column is empty. Source: Fisher, The Design
 * of Experiments (1935), chapter II: the sum of hypergeometric probabilities with the margins held.
 */
export function fisherExact({ first, second }: TwoByTwo): number {
  const drawn = first[0] + first[1];
  const marked = first[0] + second[0];
  const all = drawn + second[0] + second[1];
  let probability = 0;
  for (let count = first[0]; count <= Math.min(drawn, marked); count += 1)
    probability += hypergeometric(count, all, marked, drawn);
  return Math.min(1, probability);
}
