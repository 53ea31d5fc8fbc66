import { describe, expect, test } from 'vitest';
import { type Polled, pollText } from '../../support/clean-swap.ts';
import { factsOfPair, onlySwitchover, secondsOf, type Told, whenOf } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';

const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby'];
const end = '10:30:00 RO1 A light off';
/** Passed on in (10:04:50, 10:05:00]. */
const polledRoles: readonly Polled[] = [
  ['RO1-A', 'role', ['10:00:00', 'active'], ['10:05:00', 'standby']],
  ['RO1-B', 'role', ['10:00:00', 'standby'], ['10:05:00', 'active']],
];
const poll = (...columns: readonly Polled[]): string => pollText(['10:00:00', '10:10:00'], 10, columns);
const told = async (story: Told): Promise<readonly string[]> =>
  (await factsOfPair(story)).switchovers.map(
    (s) => `${whenOf(s.at)} ${s.fromHalf}>${s.toHalf} gap ${secondsOf(s.gapSeconds)}`,
  );

describe('a switchover that several sources tell of', () => {
  test('has a gap of which nothing is known where one line alone tells of it', async () => {
    expect(await told([...begin, '10:05:00 RO1 switchover', end])).toEqual(['10:05:00 A>B gap null']);
  });

  test('has a gap between the lines of two files, though both bear one number', async () => {
    const story = {
      'a.log': journalText(`${begin[0]}\n10:05:01 RO1 A role standby\n${end}`),
      'b.log': journalText(`${begin[1]}\n10:05:01.2 RO1 B role active\n${end}`),
    };
    expect(await told(story)).toEqual(['10:05:01 A>B gap 0.2']);
  });

  test('is at the instant that a log gives where that lies in the bounds of a poll, and else in the bounds', async () => {
    const logged = (clock: string): Promise<readonly string[]> =>
      told({
        'poll.csv': poll(...polledRoles),
        'ro1.log': journalText(`10:00:00 RO1 A link a up\n${clock} RO1 switchover\n10:10:00 RO1 A link b up`),
      });
    // Left at 10:04:53, taken in (10:04:50, 10:05:00]: at the same time or up to 7 s later.
    expect(await logged('10:04:53')).toEqual(['10:04:53 A>B gap 0-7']);
    expect(await logged('10:05:00')).toEqual(['10:05:00 A>B gap 0']);
    // The old role was read at 10:04:50 still, and the new one at 10:05:00.
    expect(await logged('10:04:45')).toEqual(['10:04:50..10:05:00 A>B gap 0-10']);
    expect(await logged('10:05:05')).toEqual(['10:04:50..10:05:00 A>B gap 0-10']);
  });

  test('is one, logged as it began or as it ended, though the other half takes the role ten minutes later', async () => {
    for (const clock of ['10:05:00', '10:15:00']) {
      const lines = ['10:05:00 RO1 A role standby', `${clock} RO1 switchover`, '10:15:00 RO1 B role active'];
      expect(await told([...begin, ...lines.sort(), end])).toEqual(['10:05:00 A>B gap 600']);
    }
  });
});

describe('what was observed before a switchover', () => {
  const ready: Polled = ['RO1', 'partner-ready', ['10:00:00', 'yes']];
  const readiness = async (clock: string): Promise<readonly unknown[]> => {
    const { partnerReady, readySeconds } = await onlySwitchover({
      'poll.csv': pollText(['10:00:00', '10:10:00'], 10, [ready], [['10:02:10', '10:03:50']]),
      'ro1.log': journalText(
        [...begin, `${clock} RO1 A role standby`, `${clock} RO1 B role active`, end].join('\n'),
      ),
    });
    return [partnerReady, readySeconds];
  };

  test('a partner that was not observed up to it may have been lost', async () => {
    // Nothing was read between 10:02:00 and 10:04:00.
    expect(await readiness('10:03:00')).toEqual([null, null]);
  });

  test('a partner that was observed again has been ready since then for sure', async () => {
    expect(await readiness('10:05:00')).toEqual([true, 60]);
    expect(await readiness('10:01:00')).toEqual([true, null]);
  });

  test('firmware that may have changed within its bounds is not known to have matched', async () => {
    const matched = async (changed: string): Promise<boolean | null> =>
      (
        await onlySwitchover({
          'poll.csv': poll(
            ...polledRoles,
            ['RO1-A', 'firmware', ['10:00:00', '6.4.1']],
            ['RO1-B', 'firmware', ['10:00:00', '6.2.0'], [changed, '6.4.1']],
          ),
        })
      ).firmwareMatched;
    expect(await matched('10:04:50')).toBe(true);
    expect(await matched('10:05:00')).toBeNull();
    expect(await matched('10:05:10')).toBe(false);
  });
});
