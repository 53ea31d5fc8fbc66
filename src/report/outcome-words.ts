import { type Attempt, sayAbout } from '../vocabulary.ts';

/** How an attempt ended, in a few words; the same in every output. */
export const outcomeWords: Readonly<Record<Attempt['outcome'], string>> = {
  ready: 'became ready',
  lost: 'ready, then lost',
  failed: 'sync failed',
  overdue: 'not ready within its limit',
  superseded: 'superseded',
  unfinished: 'log ended',
  inconclusive: 'inconclusive: readiness not observed closely enough',
};

/** What begins a bring-up or an attempt. */
export const causeWords: Readonly<Record<Attempt['cause'], string>> = {
  inserted: 'insertion',
  restart: 'restart',
  reflash: 'reflash',
  sync: 'sync start',
  loss: 'loss, no start logged',
};

/** What began an attempt, as far as it was logged. */
export function sayCause(attempt: Attempt): string {
  return isStartLogged(attempt) ? causeWords[attempt.cause] : 'start not logged';
}

/** How long an attempt went on, a failed one its sync; empty where its start was not logged. */
export function sayLength(attempt: Attempt): string {
  return isStartLogged(attempt) ? sayAbout(attempt.abort ?? attempt.watched) : '';
}

/** False where only a failed sync tells of the attempt. */
function isStartLogged({ cause, outcome, abort }: Attempt): boolean {
  return cause !== 'sync' || outcome !== 'failed' || abort !== null;
}
