import type { Condition, SourceLine, Staff, Swap, SwapNow } from '../../src/vocabulary.ts';

/** 14 March 2026, 09:18:45 UTC. */
export const newest = Date.UTC(2026, 2, 14, 9, 18, 45);

const line: SourceLine = { file: 'logs/ro1-events.log', line: 31, text: '[RO1-B] light flashing' };

/** A condition of a hold point. */
export function condition(id: string, status: Condition['status'], statement: string): Condition {
  return { id, half: null, status, statement, evidence: [line] };
}

function half(name: string, role: string, light: string): SwapNow['halves'][number] {
  return { half: name, isOut: false, role, light, model: 'Tern-4', serial: name, firmware: '6.4.1' };
}

/** A pair that waits for half B to be ready, since 2 min 37 s of 15 min. */
export function swapNowWith(changes: Partial<SwapNow> = {}): SwapNow {
  const since = newest - 157_000;
  return {
    pair: 'RO1',
    site: null,
    at: newest,
    clock: 'logs/ro1-poll.csv',
    habitSeconds: 30,
    awaits: 'ready',
    half: 'B',
    says: 'half B to be ready',
    since: { time: since, earliest: since },
    limitSeconds: 900,
    expected: { median: 151, p95: 250, n: 7 },
    holdPoint: {
      id: 'switchover',
      half: 'B',
      status: 'waiting',
      conditions: [
        condition('roles', 'met', 'Half A is active and half B is standby.'),
        condition('ready', 'waiting', 'The partner is not ready.'),
      ],
      statement: 'Before a switchover to half B: 1 of 2 conditions is not met.',
    },
    halves: [half('A', 'active', 'off'), half('B', 'standby', 'flashing')],
    lines: [line],
    swap: null,
    ...changes,
  };
}

/** A staff of two halves without anything in it, up to 09:18:45. */
export function staffFor(minutes: number, changes: Partial<Staff> = {}): Staff {
  return {
    from: newest - minutes * 60_000,
    to: newest,
    limitSeconds: 300,
    halves: ['A', 'B'],
    stretches: [],
    lights: [],
    ticks: [],
    switchovers: [],
    bringUps: [],
    unobserved: [],
    states: [],
    ...changes,
  };
}

/** A swap that is of use only for what a panel shows of it. */
export function swapWith(changes: Partial<Swap>): Swap {
  return {
    pair: 'RO1',
    site: null,
    from: newest - 1_800_000,
    to: newest,
    verdict: 'inconclusive',
    statement: 'The swap of pair RO1 is still open: half B was replaced.',
    open: null,
    halves: [
      {
        half: 'B',
        removedAt: { time: newest - 900_000, earliest: newest - 900_000 },
        insertedAt: null,
        model: { before: null, after: null },
        serial: { before: null, after: null },
        firmware: { before: null, found: null, after: null },
      },
    ],
    bringUps: [],
    switchovers: [],
    exposure: { seconds: 0, low: 0, high: 0, spans: [] },
    checks: [],
    steps: [],
    otherEvents: [],
    staff: staffFor(30),
    ...changes,
  };
}
