import type { Attempt } from '../vocabulary.ts';

/** How an attempt ended, in a word or two; the same in every output. */
export const outcomeWords: Readonly<Record<Attempt['outcome'], string>> = {
  ready: 'became ready',
  lost: 'ready, did not hold',
  failed: 'gave up',
  superseded: 'not waited for',
  unfinished: 'not ended',
};

/** What began an attempt. */
export const causeWords: Readonly<Record<Attempt['cause'], string>> = {
  inserted: 'insertion',
  restart: 'restart',
  reflash: 'reflash',
  sync: 'sync start',
  loss: 'loss',
};
