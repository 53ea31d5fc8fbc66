import { memoryShort } from '../../../src/diagnose/memory-short.ts';
import { checkCause, pollFile, pollOf } from '../../support/check-cause.ts';

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
  },
  tooLittle: { name: 'no memory is polled', names: 'free-memory' },
});
