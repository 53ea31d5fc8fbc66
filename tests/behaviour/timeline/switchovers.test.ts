import { describe, expect, test } from 'vitest';
import type { PairFacts } from '../../../src/timeline/facts.ts';
import { pollText } from '../../support/clean-swap.ts';
import { factsOfPair, onlySwitchover, secondsOf, type Told, whenOf } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';

const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby', '10:00:00 RO1 partner ready'];
const exchange = ['10:05:01 RO1 A role standby', '10:05:01.2 RO1 B role active'];
const end = '10:30:00 RO1 A light off';

const told = ({ switchovers }: PairFacts): readonly string[] =>
  switchovers.map((s) => `${whenOf(s.at)} ${s.fromHalf}>${s.toHalf} gap ${secondsOf(s.gapSeconds)}`);
const switched = async (...lines: readonly string[]): Promise<readonly string[]> =>
  told(await factsOfPair([...begin, ...lines, end]));

describe('a switchover', () => {
  test('is when the old half leaves the active role; the gap lasts until the other takes it', async () => {
    expect(await switched(...exchange)).toEqual(['10:05:01 A>B gap 0.2']);
    expect(await switched('10:05:00 RO1 A role standby', '10:15:00 RO1 B role active')).toEqual([
      '10:05:00 A>B gap 600',
    ]);
    expect(await switched('10:05:00 RO1 A role none', '10:05:03 RO1 B role active')).toEqual([
      '10:05:00 A>B gap 3',
    ]);
  });

  test('has no gap where both come at one stamp, or the other took the role before', async () => {
    expect(await switched('10:05:00 RO1 A role standby', '10:05:00 RO1 B role active')).toEqual([
      '10:05:00 A>B gap 0',
    ]);
    expect(await switched('10:05:00 RO1 B role active', '10:05:02 RO1 A role standby')).toEqual([
      '10:05:02 A>B gap 0',
    ]);
  });

  test('there and back again, three times in a row', async () => {
    const lines = [
      '10:05:00 RO1 A role standby',
      '10:05:01 RO1 B role active',
      '10:05:30 RO1 B role standby',
      '10:05:32 RO1 A role active',
      '10:06:04 RO1 B role active',
      '10:06:05 RO1 A role standby',
    ];
    expect(await switched(...lines)).toEqual([
      '10:05:00 A>B gap 1',
      '10:05:30 B>A gap 2',
      '10:06:05 A>B gap 0',
    ]);
  });

  test('polled every 10 s has bounds, and so has its gap', async () => {
    // A leaves in (10:04:50, 10:05:00], B takes over in (10:05:00, 10:05:10]: 0 s to 20 s.
    const poll = pollText(['10:00:00', '10:10:00'], 10, [
      ['RO1-A', 'role', ['10:00:00', 'active'], ['10:05:00', 'standby']],
      ['RO1-B', 'role', ['10:00:00', 'standby'], ['10:05:10', 'active']],
    ]);
    expect(told(await factsOfPair({ 'poll.csv': poll }))).toEqual(['10:04:50..10:05:00 A>B gap 0-20']);
  });

  test('is none where a half leaves the active role and takes it again', async () => {
    const polled = (
      a: readonly (readonly [string, string])[],
      b: readonly (readonly [string, string])[],
    ): Told => ({
      'poll.csv': pollText(['10:00:00', '10:10:00'], 10, [
        ['RO1-A', 'role', ['10:00:00', 'active'], ...a],
        ['RO1-B', 'role', ['10:00:00', 'standby'], ...b],
      ]),
    });
    const again = polled(
      [
        ['10:05:00', 'standby'],
        ['10:05:30', 'active'],
      ],
      [],
    );
    expect(told(await factsOfPair(again))).toEqual([]);
    const after = polled(
      [['10:05:00', 'standby']],
      [
        ['10:05:10', 'active'],
        ['10:05:30', 'standby'],
        ['10:06:00', 'active'],
      ],
    );
    expect(told(await factsOfPair(after))).toEqual(['10:04:50..10:05:00 A>B gap 0-20']);
  });

  test('is none where a half that never was active is pulled after the other took the role', async () => {
    const neither = ['10:00:00 RO1 A role standby', '10:00:00 RO1 B role standby'];
    const lines = ['10:05:00 RO1 B role active', '10:10:00 RO1 A role none', end];
    expect(told(await factsOfPair([...neither, ...lines]))).toEqual([]);
  });

  test('by the first words of both halves in mid-log is one only where they come within half a minute', async () => {
    const taken = async (clock: string): Promise<readonly string[]> =>
      told(
        await factsOfPair([
          '10:00:00 RO1 A link a up',
          '10:10:00 RO1 A role standby',
          `${clock} RO1 B role active`,
          end,
        ]),
      );
    expect(await taken('10:10:30')).toEqual(['10:10:00 A>B gap 30']);
    expect(await taken('10:10:30.001')).toEqual([]);
    expect(await taken('10:20:00')).toEqual([]);
  });

  test('is none where a role is only said again', async () => {
    expect(await switched('10:05:00 RO1 A role active', '10:05:00 RO1 B role standby')).toEqual([]);
  });

  test('rests on the lines of both halves, of the command, and of the readiness', async () => {
    const { evidence } = await onlySwitchover([
      ...begin,
      '10:05:00 RO1 switchover command',
      ...exchange,
      end,
    ]);
    expect(evidence.map((line) => line.line)).toEqual([5, 6, 4, 3]);
  });
});

describe('what a switchover came upon', () => {
  const firmware = (a: string | null, b: string | null): readonly string[] => [
    ...(a === null ? [] : [`10:01:00 RO1 A firmware ${a}`]),
    ...(b === null ? [] : [`10:01:00 RO1 B firmware ${b}`]),
  ];

  test('firmware that matched, differed, or is not known of a half', async () => {
    const matched = async (a: string | null, b: string | null): Promise<boolean | null> =>
      (await onlySwitchover([...begin, ...firmware(a, b), ...exchange, end])).firmwareMatched;
    expect(await matched('6.4.1', '6.4.1')).toBe(true);
    expect(await matched('6.4.1', '6.2.0')).toBe(false);
    expect(await matched('6.4.1', null)).toBeNull();
    expect(await matched(null, '6.4.1')).toBeNull();
    expect(await matched(null, null)).toBeNull();
  });

  test('a partner that had been ready for so long, was not, or of which nothing is known', async () => {
    const ready = async (...lines: readonly string[]): Promise<unknown> => {
      const roles = begin.slice(0, 2);
      const { partnerReady, readySeconds } = await onlySwitchover(
        [...roles, ...lines, ...exchange, end].sort(),
      );
      return [partnerReady, readySeconds];
    };
    expect(await ready('10:00:00 RO1 partner ready')).toEqual([true, 301]);
    expect(await ready('10:00:00 RO1 partner ready', '10:04:00 RO1 partner not ready')).toEqual([
      false,
      null,
    ]);
    expect(await ready('10:06:00 RO1 partner ready')).toEqual([null, null]);
    expect(await ready('10:00:00 RO1 partner present')).toEqual([null, null]);
    // Within one stamp the switchover comes before the loss it brings.
    expect(await ready('10:00:00 RO1 partner ready', '10:05:01 RO1 partner not ready')).toEqual([true, 301]);
    expect(await ready('10:00:00 RO1 partner ready', '10:05:00.999 RO1 partner not ready')).toEqual([
      false,
      null,
    ]);
    expect(await ready('10:05:01 RO1 partner ready')).toEqual([true, 0]);
  });

  test('a partner that was lost at the last reading before a polled switchover', async () => {
    const poll = pollText(['10:00:00', '10:10:00'], 10, [
      ['RO1-A', 'role', ['10:00:00', 'active'], ['10:05:00', 'standby']],
      ['RO1-B', 'role', ['10:00:00', 'standby'], ['10:05:00', 'active']],
    ]);
    const log = journalText('10:00:00 RO1 partner ready\n10:04:50 RO1 partner not ready');
    expect((await onlySwitchover({ 'poll.csv': poll, 'ro1.log': log })).partnerReady).toBe(false);
  });

  test('a partner that was ready since before the log, by a poll', async () => {
    const poll = pollText(['10:00:00', '10:10:00'], 10, [['RO1', 'partner-ready', ['10:00:00', 'yes']]]);
    const log = journalText([...begin.slice(0, 2), ...exchange, end].join('\n'));
    const { partnerReady, readySeconds } = await onlySwitchover({ 'ro1.log': log, 'poll.csv': poll });
    expect([partnerReady, readySeconds]).toEqual([true, null]);
  });
});
