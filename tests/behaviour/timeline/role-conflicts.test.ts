import { describe, expect, test } from 'vitest';
import { type Polled, pollText } from '../../support/clean-swap.ts';
import { clockOf, factsOfPair, secondsOf, type Told } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';

const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby'];
const end = '10:30:00 RO1 A light off';

async function conflicts(story: Told): Promise<readonly string[]> {
  return (await factsOfPair(story)).conflicts.map(
    (c) =>
      `${clockOf(c.from)}-${clockOf(c.to)} ${c.kind} ${c.seconds} (${secondsOf(c)}) ${c.isSeen ? 'seen' : 'possible'}`,
  );
}
/** The roles of both halves, polled every 10 s from 10:00:00 to 10:10:00. */
const polled = (a: Polled[2][], b: Polled[2][]): Told => ({
  'poll.csv': pollText(['10:00:00', '10:10:00'], 10, [
    ['RO1-A', 'role', ...a],
    ['RO1-B', 'role', ...b],
  ]),
});

describe('roles in conflict', () => {
  test('neither half active, or both, until one gives way', async () => {
    expect(
      await conflicts([...begin, '10:05:01 RO1 A role standby', '10:05:01.2 RO1 B role active', end]),
    ).toEqual(['10:05:01-10:05:01.200 none-active 0.2 (0.2) seen']);
    expect(
      await conflicts([...begin, '10:05:00 RO1 B role active', '10:05:02 RO1 A role standby', end]),
    ).toEqual(['10:05:00-10:05:02 two-active 2 (2) seen']);
  });

  test('none where both change at one stamp', async () => {
    const both = ['10:05:00 RO1 A role standby', '10:05:00 RO1 B role active'];
    expect(await conflicts([...begin, ...both, end])).toEqual([]);
  });

  test('none where a half gives the active role away and takes it back at one stamp', async () => {
    const both = ['10:05:00 RO1 A role standby', '10:05:00 RO1 A role active'];
    expect(await conflicts([...begin, ...both, end])).toEqual([]);
  });

  test('possible where the active half was out between two readings of a poll: for up to their spacing', async () => {
    // Another serial at the next reading: out and in again in (10:04:50, 10:05:00], its role read as active throughout.
    const story = {
      'poll.csv': pollText(['10:00:00', '10:10:00'], 10, [
        ['RO1-A', 'role', ['10:00:00', 'active']],
        ['RO1-A', 'serial', ['10:00:00', 'T4-1'], ['10:05:00', 'T4-2']],
        ['RO1-B', 'role', ['10:00:00', 'standby']],
      ]),
    };
    expect(await conflicts(story)).toEqual(['10:05:00-10:05:00 none-active 0 (0-10) possible']);
  });

  test('by a poll have bounds', async () => {
    // Neither from a time in (10:04:50, 10:05:00] to one in (10:05:20, 10:05:30]: 20 s to 40 s.
    const story = polled(
      [
        ['10:00:00', 'active'],
        ['10:05:00', 'standby'],
      ],
      [
        ['10:00:00', 'standby'],
        ['10:05:30', 'active'],
      ],
    );
    expect(await conflicts(story)).toEqual(['10:05:00-10:05:30 none-active 30 (20-40) seen']);
  });

  test('at one reading alone lasted no known time', async () => {
    // Neither from a time in (10:04:50, 10:05:00] to one in (10:05:00, 10:05:10].
    const story = polled(
      [
        ['10:00:00', 'active'],
        ['10:05:00', 'standby'],
      ],
      [
        ['10:00:00', 'standby'],
        ['10:05:10', 'active'],
      ],
    );
    expect(await conflicts(story)).toEqual(['10:05:00-10:05:10 none-active 10 (0-20) seen']);
  });

  test('by two polls, out of step, are possible where no reading of both shows one', async () => {
    // A left in (10:04:50, 10:05:00], B took it in (10:04:55, 10:05:05]: B may have had it first.
    const poll = (half: string, from: string, then: string, ...values: [string, string]): string =>
      pollText([from, then.replace('10:05', '10:10')], 10, [
        [`RO1-${half}`, 'role', [from, values[0]], [then, values[1]]],
      ]);
    const story = {
      'a.csv': poll('A', '10:00:00', '10:05:00', 'active', 'standby'),
      'b.csv': poll('B', '10:00:05', '10:05:05', 'standby', 'active'),
    };
    expect(await conflicts(story)).toEqual(['10:05:00-10:05:05 none-active 5 (0-15) possible']);
  });

  test('told by a poll whose clock is off lasted as long as by that clock', async () => {
    // The poll is 1 h to 1 h 10 s ahead of the log: a link that changed at 10:01:00 was read so in (11:01:00, 11:01:10].
    const minutes = ['01', '02', '03', '04', '05', '06'];
    const at =
      (hour: string, seconds: string) =>
      (minute: string, index: number): [string, string] => [
        `${hour}:${minute}:${seconds}`,
        index % 2 === 0 ? 'down' : 'up',
      ];
    const story = {
      'a.log': journalText(
        minutes
          .map(at('10', '00'))
          .map(([clock, value]) => `${clock} RO1 B link a ${value}`)
          .join('\n'),
      ),
      'poll.csv': pollText(['11:00:00', '11:10:00'], 10, [
        ['RO1-B', 'link a', ['11:00:00', 'up'], ...minutes.map(at('11', '10'))],
        ['RO1-A', 'role', ['11:00:00', 'active'], ['11:08:00', 'standby']],
        ['RO1-B', 'role', ['11:00:00', 'standby'], ['11:08:30', 'active']],
      ]),
    };
    // Neither from a time in (11:07:50, 11:08:00] to one in (11:08:20, 11:08:30].
    expect((await conflicts(story)).map((c) => c.replace(/^\S+ /, ''))).toEqual([
      'none-active 30 (20-40) seen',
    ]);
  });

  test('both active, then neither, then one', async () => {
    const story = polled(
      [
        ['10:00:00', 'active'],
        ['10:05:20', 'standby'],
      ],
      [
        ['10:00:00', 'standby'],
        ['10:05:00', 'active'],
        ['10:05:20', 'standby'],
        ['10:06:00', 'active'],
      ],
    );
    expect(await conflicts(story)).toEqual([
      '10:05:00-10:05:20 two-active 20 (10-30) seen',
      '10:05:20-10:06:00 none-active 40 (30-50) seen',
    ]);
  });

  test('that go on when the log ends count to there', async () => {
    const story = polled(
      [['10:00:00', 'active']],
      [
        ['10:00:00', 'standby'],
        ['10:05:00', 'active'],
      ],
    );
    expect(await conflicts(story)).toEqual(['10:05:00-10:10:00 two-active 300 (300-310) seen']);
  });

  test('none before both roles are known', async () => {
    const story = polled(
      [
        ['10:00:00', 'standby'],
        ['10:05:00', 'active'],
      ],
      [['10:06:00', 'standby']],
    );
    expect(await conflicts(story)).toEqual([]);
  });

  test('that a journal shows have no bounds of a poll of something else that runs beside it', async () => {
    const log = [...begin, '10:05:00 RO1 B role active', '10:05:02 RO1 A role standby', end];
    const files = {
      'ro1.log': journalText(log.join('\n')),
      'poll.csv': pollText(['10:00:00', '10:30:00'], 60, [['RO1', 'partner-ready', ['10:00:00', 'yes']]]),
    };
    expect(await conflicts(files)).toEqual(['10:05:00-10:05:02 two-active 2 (2) seen']);
  });
});
