import type { PairHealth } from '../src/pipeline.ts';
import { sayInstant } from '../src/report/words.ts';
import { type Attention, type AttentionKind, attentionKinds, sayDuration } from '../src/vocabulary.ts';
import type { PairModel } from './protocol.ts';

/** A sentence in how it is to be marked: what is normal has no colour. */
export interface Said {
  readonly words: string;
  readonly look: '' | 'fail' | 'inconclusive';
}

/** The state of a pair in words, as far as its log goes; `isStale`: other logs go on. Instants in `zone`. */
export function sayHealth(health: PairHealth, isStale: boolean, zone: string): Said {
  const state = sayState(health, zone);
  if (!isStale) return state;
  const words = `${state.words}, no data after ${sayInstant(health.to, zone)}`;
  return { words, look: state.look === 'fail' ? 'fail' : 'inconclusive' };
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

const grave: ReadonlySet<AttentionKind> = new Set(['not-ready', 'critical', 'stands-out', 'not-verified']);

/** What its state does not say already: the gravest reason of a pair as a sentence, the others in few words. */
export function sayReasons({ reasons }: Attention, state: PairHealth['state']): readonly Said[] {
  const isSaid = (kind: AttentionKind): boolean => kind === state || kind === 'stale';
  return reasons
    .map(({ kind, said }, index) => ({ kind, words: index === 0 ? said : shortReasons[kind] }))
    .filter(({ kind }) => !isSaid(kind))
    .map(({ kind, words }) => ({ words, look: lookOf(kind) }));
}

function lookOf(kind: AttentionKind): Said['look'] {
  if (grave.has(kind)) return 'fail';
  return needsAttention(kind) ? 'inconclusive' : '';
}

/** True of what a person is asked to look at; what comes after it in the order is only worth knowing. */
export function needsAttention(kind: AttentionKind): boolean {
  return attentionKinds.indexOf(kind) < attentionKinds.indexOf('unfit');
}

/** The gravest reason in few words, for a list of names. */
export const shortReasons: Readonly<Record<AttentionKind, string>> = {
  'not-ready': 'no ready partner',
  critical: 'critical finding',
  'stands-out': 'loses its partner often',
  flapping: 'flapping',
  'late-light': 'light not steady in time',
  'light-again': 'light flashes again',
  'not-verified': 'last swap not verified',
  inconclusive: 'last swap inconclusive',
  open: 'last swap not finished',
  unfit: 'not ready for a swap',
  unknown: 'state not known',
  stale: 'no data at the end',
};

/** What the last replacement of a pair came to. */
export function saySwap({ verification, rows }: PairModel, zone: string): Said {
  const last = verification.swaps.at(-1);
  if (last === undefined)
    return { words: rows.unmatched + rows.rejected === 0 ? 'none in these logs' : 'none found', look: '' };
  const day = sayInstant(last.from, zone).replace(/ \d\d:\d\d:\d\d$/, '');
  if (last.verdict === 'verified') return { words: `${day}: verified`, look: '' };
  if (last.verdict === 'not-verified') return { words: `${day}: not verified`, look: 'fail' };
  return { words: `${day}: inconclusive`, look: 'inconclusive' };
}
