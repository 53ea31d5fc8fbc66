import type { SwapNow } from '../../src/vocabulary.ts';

const line = { file: 'ro1-poll.csv', line: 7, text: 'RO1-B,lamp,2' };

/** RO1 at 09:18:12 UTC, its light awaited since 09:14:00 with five minutes; with whatever differs. */
export function exampleNow(other: Partial<SwapNow> = {}): SwapNow {
  const since = Date.parse('2026-03-14T09:14:00Z');
  return {
    pair: 'RO1',
    site: null,
    at: Date.parse('2026-03-14T09:18:12Z'),
    clock: 'ro1-poll.csv',
    habitSeconds: 30,
    awaits: 'steady',
    half: 'B',
    says: 'the light of half B to be steady',
    since: { time: since, earliest: since },
    limitSeconds: 300,
    expected: null,
    holdPoint: hold('waiting'),
    halves: [],
    lines: [line],
    swap: null,
    ...other,
  };
}

/** The hold point before a switchover, with one condition. */
export function hold(status: SwapNow['holdPoint']['status']): SwapNow['holdPoint'] {
  const statement = status === 'met' ? 'The light of half B is steady.' : 'The light of half B is flashing.';
  return {
    id: 'switchover',
    half: 'B',
    status,
    statement,
    conditions: [{ id: 'steady', half: 'B', status, statement, evidence: [line] }],
  };
}
