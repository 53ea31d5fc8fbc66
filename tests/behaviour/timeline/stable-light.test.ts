import { describe, expect, test } from 'vitest';
import { pollText } from '../../support/clean-swap.ts';
import { factsOfPair, secondsOf, type Told } from '../../support/pair-facts.ts';

const begin = [
  '10:00:00 RO1 A role active',
  '10:00:00 RO1 B role standby',
  '10:10:00 RO1 B module removed',
  '10:12:00 RO1 B module inserted',
];
const end = '10:30:00 RO1 A light off';

/** The light of the last bring-up: seconds with their bounds, open where it was never steady, and against five minutes. */
async function light(story: Told): Promise<string> {
  const last = (await factsOfPair(story)).bringUps.at(-1);
  return last === undefined ? 'no bring-up' : `${secondsOf(last.light)} ${last.light.outcome}`;
}
const following = (...lines: readonly string[]): Promise<string> => light([...begin, ...lines, end]);

describe('the light of a bring-up', () => {
  test('is steady within five minutes or not', async () => {
    expect(await following('10:12:00 RO1 B light flashing', '10:16:00 RO1 B light steady')).toBe(
      '240 within',
    );
    expect(await following('10:17:00 RO1 B light steady')).toBe('300 within');
    expect(await following('10:17:00.001 RO1 B light steady')).toBe('300.001 exceeded');
  });

  test('that was never steady is past its limit once it was watched for longer', async () => {
    expect(await following('10:12:00 RO1 B light flashing')).toBe('1080- exceeded');
    expect(await light([...begin, '10:12:00 RO1 B light flashing', '10:17:00 RO1 A light off'])).toBe(
      '300- inconclusive',
    );
    expect(await light([...begin, '10:12:00 RO1 B light flashing', '10:17:00.001 RO1 A light off'])).toBe(
      '300.001- exceeded',
    );
  });

  test('counts to the first steady that held for a minute', async () => {
    const first = '10:13:00 RO1 B light steady';
    const again = '10:15:00 RO1 B light steady';
    expect(await following(first, '10:14:00 RO1 B light flashing', again)).toBe('60 within');
    expect(await following(first, '10:13:59.999 RO1 B light flashing', again)).toBe('180 within');
  });

  test('that was steady for less than a minute when the log ended may have held from then on', async () => {
    const lines = [...begin, '10:12:00 RO1 B light flashing', '10:16:00 RO1 B light steady'];
    expect(await light([...lines, '10:16:59 RO1 A light off'])).toBe('240- inconclusive');
    expect(await light([...lines, '10:17:00 RO1 A light off'])).toBe('240 within');
  });

  test('held where it went off because its half became active', async () => {
    const steady = ['10:12:00 RO1 B light flashing', '10:16:00 RO1 B light steady'];
    const active = (clock: string): readonly string[] => [
      `${clock} RO1 A role standby`,
      `${clock} RO1 B role active`,
    ];
    const off = '10:16:30 RO1 B light off';
    expect(await following(...steady, ...active('10:16:30'), off)).toBe('240 within');
    expect(await following(...steady, off, ...active('10:16:35'))).toBe('240 within');
    expect(await following(...steady, off, ...active('10:16:35.001'))).toBe('275.001- inconclusive');
    expect(await following(...steady, off)).toBe('1080- exceeded');
    // Nothing was logged of the light after the switchover.
    expect(await following(...steady, ...active('10:16:30'))).toBe('240 within');
    expect(await following(...steady, '10:16:20 RO1 B light flashing', ...active('10:18:00'))).toBe(
      '360- exceeded',
    );
  });

  test('may have been steady unseen between two readings of off, the half active at the later', async () => {
    const polled = (spacing: number, active: string): Told => ({
      'poll.csv': pollText(['09:50:00', '10:50:00'], spacing, [
        ['RO1-B', 'light', ['09:50:00', 'steady'], ['10:00:00', 'off']],
        ['RO1-B', 'serial', ['09:50:00', 'T2-1'], ['10:00:00', ''], ['10:02:00', 'T4-2']],
        ['RO1-B', 'role', ['09:50:00', 'standby'], ['10:00:00', 'none'], [active, 'active']],
        ['RO1-A', 'role', ['09:50:00', 'active'], [active, 'standby']],
      ]),
    });
    // Every 10 min: removed in (09:50, 10:00], inserted in (09:50, 10:10], active in (10:10, 10:20]. Steady from 10:10 on at the
    // earliest, 0 s after 10:10; watched from 10:10 to 10:20.
    expect(await light(polled(600, '10:15:00'))).toBe('0- inconclusive');
    // Every 10 s: inserted by 10:02, active in (10:14:50, 10:15:00]: not steady before 10:14:50, 770 s after 10:02.
    expect(await light(polled(10, '10:15:00'))).toBe('770- exceeded');
    // Inserted and active in the same (10:00, 10:10]: it may have been steady at once.
    expect(await light(polled(600, '10:08:00'))).toBe('0- inconclusive');
  });

  test('that a removal cut short had not held', async () => {
    expect(await following('10:13:00 RO1 B light steady', '10:13:30 RO1 B module removed')).toBe(
      '90- inconclusive',
    );
    expect(await following('10:13:00 RO1 B light steady', '10:14:00 RO1 B module removed')).toBe('60 within');
  });

  test('is not observed where it was never logged, or no reading saw it but steady', async () => {
    expect(await following()).toBe('null not-observed');
    const polled = (...values: (readonly [string, string])[]): Told => ({
      'poll.csv': pollText(['10:00:00', '10:30:00'], 300, [
        ['RO1-B', 'light', ...values],
        ['RO1-B', 'serial', ['10:00:00', 'T2-1'], ['10:12:00', 'T4-2']],
      ]),
    });
    expect(await light(polled(['10:00:00', 'steady']))).toBe('null not-observed');
    // It went off as its half became active.
    expect(
      await light({
        'poll.csv': pollText(['10:00:00', '10:30:00'], 300, [
          ['RO1-B', 'light', ['10:00:00', 'steady'], ['10:25:00', 'off']],
          ['RO1-B', 'serial', ['10:00:00', 'T2-1'], ['10:12:00', 'T4-2']],
          ['RO1-B', 'role', ['10:00:00', 'standby'], ['10:25:00', 'active']],
          ['RO1-A', 'role', ['10:00:00', 'active'], ['10:25:00', 'standby']],
        ]),
      }),
    ).toBe('null not-observed');
    // Inserted in (10:10, 10:15]; steady in (10:20, 10:25]: 5 min to 15 min.
    expect(
      await light(polled(['10:00:00', 'steady'], ['10:15:00', 'flashing'], ['10:25:00', 'steady'])),
    ).toBe('300-900 inconclusive');
  });

  test('rests on the start and on the line that made it steady; without one on all that was said, and the last line', async () => {
    const evidence = async (...lines: readonly string[]): Promise<readonly number[] | undefined> =>
      (await factsOfPair([...begin, ...lines, end])).bringUps.at(-1)?.lightEvidence.map((line) => line.line);
    expect(await evidence('10:12:00 RO1 B light flashing', '10:16:00 RO1 B light steady')).toEqual([4, 6]);
    expect(await evidence('10:12:00 RO1 B light flashing', '10:20:00 RO1 B light off')).toEqual([4, 5, 6, 7]);
    expect(await evidence()).toEqual([4]);
  });
});
