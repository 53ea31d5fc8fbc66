import { activeOverloaded } from '../../../src/diagnose/active-overloaded.ts';
import { checkCause, pollFile, pollOf } from '../../support/check-cause.ts';

checkCause(activeOverloaded, {
  shows: {
    name: 'the active half is at 96 % from the loss on',
    files: pollFile(
      pollOf('RO1-A', 'load', [
        [0, 35],
        [60, 96],
      ]),
    ),
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
