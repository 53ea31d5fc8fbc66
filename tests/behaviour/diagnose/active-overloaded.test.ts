import { activeOverloaded } from '../../../src/diagnose/active-overloaded.ts';
import { checkCause, pollFile, pollOf } from '../../support/check-cause.ts';

/**
 * Three attempts failed, and once the partner was ready. So at all of the failed ones and at none of the ready: (3.5 / 4) to
 * (0.5 / 2) is 3.5 to 1, which is 5.4 decibans, and what the state weighs before any count.
 */
checkCause(activeOverloaded, {
  shows: {
    name: 'the active half is at 96 % from the loss on',
    files: pollFile(
      pollOf('RO1-A', 'load', [
        [0, 35],
        [60, 96],
      ]),
    ),
    for: [
      'The median load of the active half A was 96 %; the limit is 90 %. This was so at 3 of 3 failed attempts and at 0 of 1 time with a ready partner.',
    ],
    against: [],
    decibans: 11.4,
  },
  lookAlike: {
    name: 'it is at 96 % for five minutes only',
    files: pollFile(
      pollOf('RO1-A', 'load', [
        [0, 35],
        [60, 96],
        [65, 40],
      ]),
    ),
    instead: 'too-little-data',
  },
  tooLittle: { name: 'no load is polled', names: 'load' },
});
