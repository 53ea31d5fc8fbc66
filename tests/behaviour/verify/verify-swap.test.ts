import { describe, expect, test } from 'vitest';
import type { Swap } from '../../../src/vocabulary.ts';
import { at, onlySwap, pollText, type SwapStory } from '../../support/clean-swap.ts';

const point = (clock: string): unknown => ({ time: at(clock), earliest: at(clock) });
/** Half A replaced after half B, as it should be. */
const halfA = [
  '08:40:00  RO1 A  serial T2-9',
  '09:30:00  RO1 A  module removed',
  '09:30:00  RO1    partner not ready',
  '09:32:00  RO1 A  module inserted',
  '09:32:00  RO1 A  serial T4-9',
  '09:32:00  RO1 A  model Tern-4',
  '09:32:00  RO1 A  firmware 6.4.1',
  '09:32:00  RO1 A  light flashing',
  '09:35:00  RO1    partner ready',
  '09:36:00  RO1 A  light steady',
  '10:10:00  RO1    configuration current',
];

describe('the verdict', () => {
  const cases: readonly (readonly [string, SwapStory, Swap['verdict'], string])[] = [
    [
      'a swap as it should be',
      {},
      'verified',
      'Pair RO1 is verified: half B was replaced and it came back redundant.',
    ],
    [
      'both halves, one after the other',
      { plus: halfA },
      'verified',
      'Pair RO1 is verified: halves B and A were replaced and it came back redundant.',
    ],
    [
      'neither light nor links are logged: to be signed for by hand',
      { without: ['light', 'link'] },
      'verified',
      'Pair RO1 is verified: half B was replaced and it came back redundant. Not observed, check at the cabinet and sign by hand: light steady within five minutes; both links of both halves up, not crossed.',
    ],
    [
      'the new module keeps its old firmware',
      { without: ['09:05:00', 'reflash', '09:09:00'], plus: ['09:06:00  RO1 B  light steady'] },
      'not-verified',
      'Pair RO1 is not verified: half B was replaced, but 1 of 16 checks failed: firmware of both halves the same.',
    ],
    [
      'one check fails, another can not be judged: it is not verified',
      {
        without: ['09:05:00', 'reflash', '09:09:00', 'A  model', 'link'],
        plus: ['09:06:00  RO1 B  light steady'],
      },
      'not-verified',
      'Pair RO1 is not verified: half B was replaced, but 1 of 16 checks failed: firmware of both halves the same. Not observed, check at the cabinet and sign by hand: both links of both halves up, not crossed.',
    ],
    [
      'the model of the other half is not known',
      { without: ['A  model'] },
      'inconclusive',
      'The swap of pair RO1 is inconclusive: half B was replaced, but 1 of 16 checks came out inconclusive: models of both halves the same, and as planned.',
    ],
    [
      'which half was standby is never logged: nothing is verified without it',
      { without: ['role'] },
      'inconclusive',
      'The swap of pair RO1 is inconclusive: half B was replaced, but 2 of 16 checks came out inconclusive: partner ready before each switchover; every switchover commanded. Not observed, check at the cabinet and sign by hand: only the standby was removed; new module took the standby role; exactly one half active throughout.',
    ],
    [
      'readiness is never logged: nothing is verified without it',
      { without: ['partner'] },
      'inconclusive',
      'The swap of pair RO1 is inconclusive: half B was replaced. Not observed, check at the cabinet and sign by hand: ready partner before the work; each new module synchronised; partner ready before each switchover; no flapping after the first insertion; ready partner for 30 minutes at the end.',
    ],
  ];
  test.each(cases)('%s', async (_, story, verdict, statement) => {
    expect(await onlySwap(story)).toMatchObject({ pair: 'RO1', verdict, statement });
  });
});

describe('before and after', () => {
  test('a half with what it was, what came and what it is', async () => {
    expect((await onlySwap({})).halves).toEqual([
      {
        half: 'B',
        removedAt: point('09:00:00.000'),
        insertedAt: point('09:02:00.000'),
        model: { before: 'Tern-2', after: 'Tern-4' },
        serial: { before: 'T2-1', after: 'T4-2' },
        firmware: { before: '6.4.1', found: '6.2.0', after: '6.4.1' },
      },
    ]);
  });

  test('each half has its row', async () => {
    const { halves } = await onlySwap({ plus: halfA });
    expect(halves.map((h) => [h.half, h.serial.before, h.serial.after])).toEqual([
      ['B', 'T2-1', 'T4-2'],
      ['A', 'T2-9', 'T4-9'],
    ]);
  });

  test('a new module that was itself replaced: one row, from the first removal to the last insertion', async () => {
    const { halves } = await onlySwap({
      without: ['09:20'],
      plus: [
        '09:30:00  RO1 B  module removed',
        '09:32:00  RO1 B  module inserted',
        '09:32:00  RO1 B  model Tern-5',
        '09:32:00  RO1 B  serial T4-3',
        '09:32:00  RO1 B  firmware 6.3.0',
      ],
    });
    expect(halves).toEqual([
      {
        half: 'B',
        removedAt: point('09:00:00.000'),
        insertedAt: point('09:32:00.000'),
        model: { before: 'Tern-2', after: 'Tern-5' },
        serial: { before: 'T2-1', after: 'T4-3' },
        firmware: { before: '6.4.1', found: '6.3.0', after: '6.3.0' },
      },
    ]);
  });

  test('without a ready partner from the removal to the readiness: seven minutes', async () => {
    const spans = [{ from: at('09:00:00'), to: at('09:07:00') }];
    expect((await onlySwap({})).exposure).toEqual({ seconds: 420, low: 420, high: 420, spans });
  });
});

describe('what else happened', () => {
  const others = async (...plus: readonly string[]): Promise<readonly string[]> =>
    (await onlySwap({ plus })).otherEvents.map(
      (e) => `${new Date(e.time).toISOString().slice(11, 21)} ${e.half ?? 'pair'} ${e.signal} ${e.value}`,
    );

  test('nothing in a swap as it should be: the states that the log begins with are no happenings', async () => {
    expect(await others()).toEqual([]);
  });

  test('nothing where a poll begins in the middle of the swap: its first readings are no happenings', async () => {
    const supply = pollText(['09:10:00', '09:40:00'], 10, [['RO1-A', 'supply', ['09:10:00', 'good']]]);
    expect((await onlySwap({ files: { 'supply.csv': supply } })).otherEvents).toEqual([]);
  });

  test('from the fifteen minutes before the first removal to the end of the swap', async () => {
    expect(
      await others(
        '08:44:59.9  RO1 A  supply fault',
        '08:45:00  RO1 A  supply good',
        '09:25:00  RO1    configuration pending',
        '09:26:00  RO1    configuration current',
        '09:37:00  RO1 A  supply fault',
        '09:37:00.1  RO1 A  supply good',
      ),
    ).toEqual([
      '08:45:00.0 A supply good',
      '09:25:00.0 pair configuration pending',
      '09:26:00.0 pair configuration current',
      '09:37:00.0 A supply fault',
    ]);
  });

  test('links that go and come with their module are part of its step; other links are not', async () => {
    expect(
      await others(
        '08:59:29.9  RO1 B  link b down',
        '08:59:30  RO1 B  link a down',
        '09:00:10  RO1 A  link a down',
        '09:00:20  RO1 A  link a up',
        '09:02:30  RO1 B  link a up',
        '09:02:30.1  RO1 B  link b up',
      ),
    ).toEqual([
      '08:59:29.9 B link-b down',
      '09:00:10.0 A link-a down',
      '09:00:20.0 A link-a up',
      '09:02:30.1 B link-b up',
    ]);
  });

  test('a fault just before the removal, with what the log says of it, and one at its very stamp', async () => {
    expect(await others('08:59:50  RO1 B  fault', '09:00:00  RO1 A  supply fault')).toEqual([
      '08:59:50.0 B fault fault',
      '09:00:00.0 A supply fault',
    ]);
  });
});
