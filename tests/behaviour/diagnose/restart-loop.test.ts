import { describe, expect, test } from 'vitest';
import { restartLoop } from '../../../src/diagnose/restart-loop.ts';
import { checkCause, diagnoseCase, toldOf } from '../../support/check-cause.ts';

function restartsAt(...clocks: readonly string[]): readonly string[] {
  return clocks.map((clock) => `${clock}  RO1 B  module restart`);
}

const irregular = ['07:00', '07:02', '07:09', '07:12', '07:31', '07:34'];

checkCause(restartLoop, {
  shows: {
    name: 'a restart every 200 s, give or take one',
    without: ['sync'],
    plus: restartsAt('07:00:00', '07:03:20', '07:06:41', '07:10:00', '07:13:20', '07:16:41'),
    // 200, 201, 199, 200 and 201 s apart.
    for: [
      'Half B restarted 6 times, with a median of 3 min 20 s between two, half of them within 1.0 s of it.',
      '5 of the 5 restarts after the first came within 30 min 00 s of the one before and were not brought by a failed sync.',
    ],
    against: [],
  },
  lookAlike: {
    name: 'as many restarts, each after a sync that failed by itself',
    without: ['sync'],
    plus: irregular.flatMap((clock, index) => [
      `${clock}:00  RO1 B  module restart`,
      `${clock}:20  RO1 B  sync start`,
      `${clock}:${[31, 58, 40, 52, 27, 45][index]}  RO1 B  sync failed`,
    ]),
    instead: 'too-little-data',
    // 2, 7, 3, 19 and 3 min apart: the middle is 3, and they are 0, 0, 1, 4 and 16 min from it.
    against: [
      'Half B restarted 6 times, with a median of 3 min 00 s between two, half of them within 1 min 00 s of it.',
      '0 of the 5 restarts after the first came within 30 min 00 s of the one before and were not brought by a failed sync.',
    ],
  },
  tooLittle: {
    name: 'two restarts only',
    without: ['sync'],
    plus: restartsAt('07:00:00', '07:03:20'),
    names: 'load',
    against: ['Half B restarted 2 times: too few for a loop.'],
    lines: ['07:00:00 RO1 B module restart', '07:03:20 RO1 B module restart'],
  },
});

describe('restarts without a rhythm', () => {
  const weight = async (...clocks: readonly string[]): Promise<unknown> =>
    (await toldOf({ without: ['sync'], plus: restartsAt(...clocks) }, 'restart-loop'))[0];

  test('are a loop from the fourth on: a person tries twice or thrice', async () => {
    // Three times one followed another: 10 decibans, and 1 for each time more.
    expect(await weight('07:00:00', '07:02:00', '07:09:00', '07:12:30')).toBe(10);
    expect(await weight('07:00:00', '07:02:00', '07:09:00', '07:12:30', '07:31:00')).toBe(11);
    expect(await weight('07:00:00', '07:02:00', '07:09:00')).toBe('doubted');
  });

  test('are a loop where each comes within half an hour after the one before', async () => {
    expect(await weight('07:00:00', '07:02:00', '07:09:00', '07:39:00')).toBe(10);
    expect(await weight('07:00:00', '07:02:00', '07:09:00', '07:39:00.001')).toBe('doubted');
  });

  test('are a loop where a word of the failed sync comes with the restart, not where it came long before', async () => {
    const story = (seconds: string): readonly string[] => [
      ...restartsAt('07:00:00', '07:02:00', '07:09:00', '07:12:30'),
      '07:03:00  RO1 B  sync start',
      `07:08:${seconds}  RO1 B  sync failed`,
    ];
    const told = async (seconds: string): Promise<unknown> =>
      (await toldOf({ without: ['sync'], plus: story(seconds) }, 'restart-loop'))[0];
    // 5 s before the restart at 07:09:00, and a moment more.
    expect(await told('55.001')).toBe(10);
    expect(await told('55')).toBe('doubted');
  });

  test('that follow syncs which end after a fixed time are not the trouble, however soon they follow', async () => {
    // Each sync lasts 60 s, give or take what is given; 2 s after it failed the half restarts by itself.
    const story = (lasting: readonly number[]): readonly string[] => {
      let second = 0;
      const clock = (): string =>
        `07:${String(Math.floor(second / 60)).padStart(2, '0')}:${String(second % 60).padStart(2, '0')}`;
      return lasting.flatMap((seconds, index) => {
        const lines = [`${clock()}  RO1 B  module restart`];
        second += 20 + 31 * (index % 3);
        lines.push(`${clock()}  RO1 B  sync start`);
        second += seconds;
        lines.push(`${clock()}  RO1 B  sync failed`);
        second += 2;
        return lines;
      });
    };
    const first = async (lasting: readonly number[]): Promise<string | undefined> =>
      (await diagnoseCase({ name: '', without: ['sync'], plus: story(lasting) })).causes[0]?.id;
    expect(await first([60, 61, 60, 59, 60])).toBe('aborts-at-fixed-time');
    expect(await first([60, 130, 12, 250, 33])).toBe('restart-loop');
  });

  test('are no loop where a supply fault brings each', async () => {
    const clocks = ['07:00', '07:02', '07:09', '07:12'];
    const plus = clocks.flatMap((clock) => [
      `${clock}:00  RO1 B  supply fault`,
      `${clock}:02  RO1 B  module restart`,
      `${clock}:10  RO1 B  supply good`,
    ]);
    expect(await toldOf({ without: ['sync'], plus }, 'restart-loop')).toEqual([
      'doubted',
      'No restart of half B was logged in this time.',
    ]);
  });
});
