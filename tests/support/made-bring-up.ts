import type { BringUp, Measure } from '../../src/vocabulary.ts';

const line = { file: 'made.log', line: 1, text: 'made' };

/** What a made bring-up needs: how long it took and how it ended; the rest is alike for all. */
export interface Made {
  readonly seconds: number;
  /** `unfinished` and `superseded`: not ready after so long. */
  readonly outcome: BringUp['outcome'];
  readonly cause?: BringUp['cause'];
  readonly firmware?: string;
  readonly pair?: string;
  /** Bounds a poll leaves, in seconds either way. */
  readonly within?: number;
  /** When it began, in milliseconds UTC. */
  readonly time?: number;
}

/** A bring-up as the timeline would give it: for studies and tests of what is done with many of them. */
export function madeBringUp({
  seconds,
  outcome,
  cause = 'reflash',
  firmware = '6.4.1',
  pair = 'RO1',
  within = 0,
  time = 0,
}: Made): BringUp {
  const isReady = outcome === 'settled' || outcome === 'lost';
  const measure: Measure = {
    seconds,
    low: isReady ? Math.max(0, seconds - within) : seconds,
    high: isReady ? seconds + within : null,
    censored: !isReady,
    outcome: null,
  };
  const ready = { time: time + seconds * 1000, earliest: time + seconds * 1000 };
  return {
    pair,
    half: 'B',
    cause,
    start: { time, earliest: time },
    startDerived: false,
    firmware,
    model: 'Tern-4',
    serial: null,
    outcome,
    sync: measure,
    held: outcome === 'settled' ? measure : { ...measure, censored: true, high: null },
    settledSeconds: outcome === 'settled' ? seconds : null,
    light: measure,
    settled: outcome === 'settled' ? ready : null,
    mayHaveSettledAt: outcome === 'settled' ? ready.time : null,
    ready: isReady ? ready : null,
    watchedTo: ready.time,
    evidence: [line],
    lightEvidence: [line],
  };
}
