import type { PairHealth } from '../src/pipeline.ts';
import { sayInstant } from '../src/report/words.ts';
import { sayDuration } from '../src/vocabulary.ts';
import type { PairModel } from './protocol.ts';

/** A pair last read this long before the end of all logs has no data since. Chosen here: an hour of silence is seen. */
const staleMs = 3_600_000;

/** A sentence in how it is to be marked: what is normal has no colour. */
export interface Said {
  readonly words: string;
  readonly look: '' | 'fail' | 'inconclusive';
}

/** The state of a pair in words, as far as its log goes. `end` is the end of all logs; instants in `zone`. */
export function sayHealth(health: PairHealth, end: number, zone: string): Said {
  const state = sayState(health, zone);
  if (!isStale(health, end)) return state;
  const words = `no data after ${sayInstant(health.to, zone)}; ${state.words} until then`;
  return { words, look: state.look === 'fail' ? 'fail' : 'inconclusive' };
}

function isStale({ to }: PairHealth, end: number): boolean {
  return end - to > staleMs;
}

function sayState({ state, since, losses, from, to }: PairHealth, zone: string): Said {
  const lasted = sayDuration((to - (since?.time ?? from)) / 1000);
  switch (state) {
    case 'ready':
      return {
        words: since === null ? `ready since the log began, ${lasted}` : `ready for ${lasted}`,
        look: '',
      };
    case 'flapping':
      return { words: `flapping: ${losses} losses in ${lasted}`, look: 'inconclusive' };
    case 'not-ready':
      return {
        words: `no ready partner since ${since === null ? 'the log began' : sayInstant(since.time, zone)}`,
        look: 'fail',
      };
    case 'unknown':
      return { words: 'not known: no log says whether its partner was ready', look: 'inconclusive' };
  }
}

/** How much a pair needs attention; the most first: 0 is the most. */
export function attentionRank({ health, verification }: PairModel, end: number): number {
  if (health.state === 'not-ready') return 0;
  if (health.state === 'flapping') return 1;
  const verdicts = verification.swaps.map((s) => s.verdict);
  if (verdicts.at(-1) === 'not-verified') return 2;
  if (verdicts.at(-1) === 'inconclusive') return 3;
  if (health.state === 'unknown') return 4;
  return isStale(health, end) ? 5 : 6;
}

/** What the last replacement of a pair came to. */
export function saySwap({ verification, rows }: PairModel, zone: string): Said {
  const last = verification.swaps.at(-1);
  if (last === undefined)
    return { words: rows.unmatched + rows.rejected === 0 ? 'none in these logs' : 'none found', look: '' };
  const day = sayInstant(last.from, zone).replace(/ \d\d:\d\d:\d\d$/, '');
  if (last.verdict === 'verified') return { words: `${day}: verified`, look: '' };
  if (last.verdict === 'not-verified') return { words: `${day}: not verified`, look: 'fail' };
  return { words: `${day}: not settled`, look: 'inconclusive' };
}
