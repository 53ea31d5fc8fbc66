import { memoryShort } from '../../../src/diagnose/memory-short.ts';
import { checkCause, pollFile, pollOf } from '../../support/check-cause.ts';

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
      'Half B had a median of 98 KiB of free memory, its peers 3906 KiB. It was so at 3 of 3 attempts that failed, and at 0 of 1 time that a partner was ready.',
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
