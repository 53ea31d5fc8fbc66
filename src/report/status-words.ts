import type { CheckStatus } from '../vocabulary.ts';

/** How a check's status is said; the same words in every output. */
export const statusWords: Readonly<Record<CheckStatus, string>> = {
  pass: 'pass',
  fail: 'fail',
  inconclusive: 'inconclusive',
  'not-observed': 'not observed',
};
