import type { ChanceQuestion, Finding } from '../vocabulary.ts';
import type { Limits } from './limits.ts';

/**
 * A question of chance with the finding that its answer would be, if it can hold at all: what all pairs are asked only makes a
 * chance greater. It is a question only if its answer could hold; what was found is no reason to ask it or not. The sentence of
 * the finding ends where its chance is said, in the same brackets.
 */
export function askIf(p: number, { significance }: Limits, finding: () => Finding): ChanceQuestion {
  return { p, finding: p <= significance ? finding() : null };
}
