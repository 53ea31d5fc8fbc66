import { expect, test } from 'vitest';
import { memoryShort } from '../../../src/diagnose/memory-short.ts';
import { checkCause, pollFile, pollOf, toldOf } from '../../support/check-cause.ts';

/**
 * Three attempts failed, and once the partner was ready. So at all of the failed ones and at none of the ready: (3.5 / 4) to
 * (0.5 / 2) is 3.5 to 1, which is 5.4 decibans, and what the state weighs before any count.
 */
checkCause(memoryShort, {
  shows: {
    name: 'the standby has a fortieth of what the other half has',
    files: pollFile(
      pollOf('RO1-A', 'free-memory', [[0, 4e6]]),
      pollOf('RO1-B', 'free-memory', [
        [0, 4e6],
        [60, 1e5],
      ]),
    ),
    // 4,000,000 and 100,000 bytes.
    for: [
      'Half B had a median of 98 KiB of free memory, its peers 3906 KiB. This was so at 3 of 3 failed attempts and at 0 of 1 time with a ready partner.',
    ],
    against: [],
    decibans: 11.4,
  },
  lookAlike: {
    name: 'it has a quarter of it',
    files: pollFile(
      pollOf('RO1-A', 'free-memory', [[0, 4e6]]),
      pollOf('RO1-B', 'free-memory', [
        [0, 4e6],
        [60, 1e6],
      ]),
    ),
    instead: 'too-little-data',
    against: ['Half B had a median of 977 KiB of free memory, its peers 3906 KiB.'],
  },
  tooLittle: { name: 'no memory is polled', names: 'free-memory' },
});

test('of the active half counts as that of the standby; of both, other pairs show it', async () => {
  const memory = (
    active: number,
    standby: number,
    ...others: readonly (readonly string[])[]
  ): Promise<readonly unknown[]> => {
    const half = (unit: string, bytes: number): readonly string[] =>
      pollOf(unit, 'free-memory', [
        [0, 4e6],
        [60, bytes],
      ]);
    const files = pollFile(half('RO1-A', active), half('RO1-B', standby), ...others);
    return toldOf({ files }, 'memory-short');
  };
  const RO2 = [pollOf('RO2-A', 'free-memory', [[0, 4e6]]), pollOf('RO2-B', 'free-memory', [[0, 4e6]])];
  expect((await memory(1e5, 4e6)).slice(0, 2)).toEqual([
    11.4,
    'Half A had a median of 98 KiB of free memory, its peers 3906 KiB. This was so at 3 of 3 failed attempts and at 0 of 1 time with a ready partner.',
  ]);
  expect((await memory(1e5, 1e5, ...RO2))[0]).toBe(11.4);
  // Alone, and short from the beginning on, both are as their peers are.
  const short = pollFile(
    pollOf('RO1-A', 'free-memory', [[0, 1e5]]),
    pollOf('RO1-B', 'free-memory', [[0, 1e5]]),
  );
  expect((await toldOf({ files: short }, 'memory-short'))[0]).toBe('doubted');
});

test('is counted as it was when a partner became ready, however it was later', async () => {
  // Short from 06:20 on, while the partner was ready since 06:00 and lost at 07:00.
  const files = pollFile(
    pollOf('RO1-A', 'free-memory', [[0, 4e6]]),
    pollOf('RO1-B', 'free-memory', [
      [0, 4e6],
      [20, 1e5],
    ]),
  );
  expect((await toldOf({ files }, 'memory-short'))[0]).toBe(11.4);
});
