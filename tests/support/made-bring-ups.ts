import type { BringUp, BringUpCause } from '../../src/vocabulary.ts';

/** What a made bring-up says; the rest stands for one that settled. */
export interface MadeBringUp {
  readonly pair?: string;
  readonly cause?: BringUpCause;
  readonly firmware?: string;
  /** Milliseconds UTC. */
  readonly start: number;
  readonly seconds: number;
  /** It was watched for so long, and not seen to end. */
  readonly isCensored?: boolean;
  /** Its bounds, where they are not the time itself; seconds. */
  readonly high?: number;
}

/** A bring-up of half B with its sync time, known to the second it gives. */
export function madeBringUp(made: MadeBringUp): BringUp {
  const { pair = 'RO1', cause = 'reflash', firmware = '6.4.1', start, seconds, isCensored = false } = made;
  const end = start + seconds * 1000;
  const high = isCensored ? null : (made.high ?? seconds);
  const sync = { seconds, low: seconds, high, censored: isCensored, outcome: null } as const;
  const evidence = [{ file: 'made.log', line: 1, text: '' }] as const;
  return {
    pair,
    half: 'B',
    cause,
    start: { time: start, earliest: start },
    startDerived: false,
    firmware,
    model: 'Tern-4',
    serial: null,
    outcome: isCensored ? 'unfinished' : 'settled',
    sync,
    held: sync,
    settledSeconds: isCensored ? null : seconds,
    light: sync,
    settled: isCensored ? null : { time: end, earliest: end },
    mayHaveSettledAt: isCensored ? null : end,
    ready: isCensored ? null : { time: end, earliest: end },
    watchedTo: end,
    evidence,
    lightEvidence: evidence,
  };
}
