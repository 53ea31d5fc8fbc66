import { describe, expect, test } from 'vitest';
import type { Step } from '../../../src/vocabulary.ts';
import { onlySwap, type SwapStory } from '../../support/clean-swap.ts';

const clock = (time: number): string => new Date(time).toISOString().slice(11, 19);
const told = ({ time, statement, duration }: Step): readonly unknown[] => [
  clock(time),
  statement,
  duration?.seconds ?? null,
];

async function stepsOf(story: SwapStory): Promise<readonly Step[]> {
  return (await onlySwap(story)).steps;
}

describe('the steps of a swap', () => {
  test('are in the order of time, each with what it took', async () => {
    // Ready 2 min after the reflash, steady after 4; ready from 09:07:00 to 09:20:01, the gap is 100 ms.
    expect((await stepsOf({})).map(told)).toEqual([
      ['09:00:00', 'Module removed, half B', null],
      ['09:02:00', 'New module inserted, half B', null],
      ['09:03:00', 'Reflash started, half B', null],
      ['09:05:00', 'Reflash ended, half B', null],
      ['09:07:00', 'Partner ready and stayed ready; time from the reflash of half B', 120],
      ['09:09:00', 'Light of half B steady', 240],
      ['09:20:00', 'Switchover commanded', null],
      [
        '09:20:01',
        'Switchover from half A to half B, partner ready for 13 min 01 s; time without an active half',
        0.1,
      ],
    ]);
  });

  test('name their half, the checks that rest on them, and their lines', async () => {
    const steps = await stepsOf({});
    expect(steps.map(({ half, checks }) => [half, ...checks])).toEqual([
      ['B', 'removed-standby', 'one-half-at-a-time'],
      ['B', 'identified-standby'],
      ['B'],
      ['B', 'firmware-matched'],
      ['B', 'synchronised', 'soaked'],
      ['B', 'light-steady'],
      [null, 'switchover-commanded'],
      ['B', 'ready-before-switchover', 'never-without-active'],
    ]);
    const evidence = steps.map((s) => s.evidence.map((line) => line.text.replace(/^\S+T(\S+?)\.\d+Z/, '$1')));
    expect(evidence).toEqual([
      ['09:00:00 RO1-B module removed'],
      ['09:02:00 RO1-B module inserted'],
      ['09:03:00 RO1-B reflash start'],
      ['09:05:00 RO1-B reflash end'],
      ['09:05:00 RO1-B reflash end', '09:07:00 RO1 partner ready'],
      ['09:05:00 RO1-B reflash end', '09:09:00 RO1-B light steady'],
      ['09:20:00 RO1 switchover command'],
      [
        '09:20:01 RO1-A role standby',
        '09:20:01 RO1-B role active',
        '09:20:00 RO1 switchover command',
        '09:07:00 RO1 partner ready',
      ],
    ]);
  });

  test('begin with the first removal and end with the swap', async () => {
    // Settled at 09:07, so the swap ends at 09:37:00.
    const steps = await stepsOf({
      plus: [
        '08:50:00  RO1 B  module restart',
        '09:37:00  RO1    switchover command',
        '09:37:00.1  RO1 B  module restart',
      ],
    });
    expect(steps[0]?.statement).toBe('Module removed, half B');
    expect(steps.slice(-1).map(told)).toEqual([['09:37:00', 'Switchover commanded', null]]);
  });

  test('tell of a restart, a failed synchronisation, and a partner that did not stay ready', async () => {
    const steps = await stepsOf({
      without: ['reflash', '09:05:00', '09:07:00', '09:09:00', '09:20'],
      plus: [
        '09:04:00  RO1    partner ready',
        '09:04:30  RO1    partner not ready',
        '09:06:00  RO1 B  sync failed',
        '09:10:00  RO1 B  module restart',
        '09:12:00  RO1    partner ready',
        '09:13:00  RO1 B  light steady',
      ],
    });
    expect(steps.slice(2).map(told)).toEqual([
      ['09:04:00', 'Partner ready but did not stay ready (lost); time from the insertion of half B', 120],
      ['09:06:00', 'Sync failed, half B', null],
      // The failure ended the watch on the insertion of 09:02.
      ['09:06:00', 'Light of half B still not steady', 240],
      ['09:10:00', 'Module restarted, half B', null],
      ['09:12:00', 'Partner ready and stayed ready; time from the restart of half B', 120],
      ['09:13:00', 'Light of half B steady', 180],
    ]);
  });

  test('say that the partner was not ready at a switchover, and nothing where that is not known', async () => {
    const last = async (story: SwapStory): Promise<unknown> => (await stepsOf(story)).at(-1)?.statement;
    expect(await last({ without: ['09:07:00'] })).toBe(
      'Switchover from half A to half B, partner not ready; time without an active half',
    );
    expect(await last({ without: ['partner'] })).toBe(
      'Switchover from half A to half B; time without an active half',
    );
  });

  test('tell when the light was steady for good, not when it first was', async () => {
    const steps = await stepsOf({
      plus: ['09:06:00  RO1 B  light steady', '09:06:30  RO1 B  light flashing'],
    });
    expect(steps.filter((s) => s.statement.startsWith('Light')).map(told)).toEqual([
      ['09:09:00', 'Light of half B steady', 240],
    ]);
  });

  test('do not say that a partner or a light did not hold where the log ends too early to see it', async () => {
    const steps = await stepsOf({
      without: ['09:09:00', '09:20', '09:45'],
      plus: ['09:07:10  RO1 B  light steady', '09:07:30  RO1    configuration current'],
    });
    expect(steps.slice(-2).map(told)).toEqual([
      [
        '09:07:00',
        'Partner ready, observation too short to tell whether it stayed ready; time from the reflash of half B',
        120,
      ],
      ['09:07:10', 'Light of half B steady, observation too short to tell whether it stayed steady', 150],
    ]);
  });

  test('say how long a light was watched that was never steady', async () => {
    const steps = await stepsOf({
      without: ['09:09:00', '09:20', '09:45'],
      plus: ['09:30:00  RO1    configuration current'],
    });
    expect(steps.at(-1)).toMatchObject({
      statement: 'Light of half B still not steady',
      duration: { seconds: 1500, censored: true, outcome: 'exceeded' },
      checks: ['light-steady'],
    });
  });

  test('pass over a light that a reflash left no time, but not one that was steady or past its limit before', async () => {
    // Inserted at 09:02: the reflash begins one minute later, or six.
    const lights = (steps: readonly Step[]): unknown =>
      steps.filter((s) => s.statement.startsWith('Light')).map(told);
    const late = await stepsOf({
      without: ['reflash', '09:05:00', '09:07:00', '09:09:00'],
      plus: [
        '09:08:00  RO1 B  reflash start',
        '09:10:00  RO1 B  reflash end',
        '09:10:00  RO1 B  firmware 6.4.1',
        '09:12:00  RO1    partner ready',
        '09:14:00  RO1 B  light steady',
      ],
    });
    const steadyBefore = await stepsOf({
      without: ['reflash', '09:05:00', '09:07:00', '09:09:00'],
      plus: [
        '09:03:00  RO1 B  light steady',
        '09:08:00  RO1 B  reflash start',
        '09:08:00  RO1 B  light flashing',
        '09:10:00  RO1 B  reflash end',
        '09:10:00  RO1 B  firmware 6.4.1',
        '09:12:00  RO1    partner ready',
        '09:14:00  RO1 B  light steady',
      ],
    });
    expect(lights(await stepsOf({}))).toEqual([['09:09:00', 'Light of half B steady', 240]]);
    expect(lights(steadyBefore)).toEqual([
      ['09:03:00', 'Light of half B steady', 60],
      ['09:14:00', 'Light of half B steady', 240],
    ]);
    expect(lights(late)).toEqual([
      ['09:08:00', 'Light of half B still not steady', 360],
      ['09:14:00', 'Light of half B steady', 240],
    ]);
  });

  test('leave out what was never logged', async () => {
    const steps = await stepsOf({ without: ['partner', 'light', '09:20', 'reflash', '09:05:00'] });
    expect(steps.map((s) => s.statement)).toEqual(['Module removed, half B', 'New module inserted, half B']);
  });
});
