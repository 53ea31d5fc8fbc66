import { linksCrossed } from '../../../src/diagnose/links-crossed.ts';
import { checkCause } from '../../support/check-cause.ts';

/**
 * Three attempts failed, and once the partner was ready. So at all of the failed ones and at none of the ready: (3.5 / 4) to
 * (0.5 / 2) is 3.5 to 1, which is 5.4 decibans, and what the state weighs before any count.
 */
checkCause(linksCrossed, {
  shows: {
    name: 'the links are crossed all the while',
    plus: ['06:59:50  RO1 B  links crossed'],
    for: [
      'The links of half B are crossed. This was so at 3 of 3 failed attempts and at 0 of 1 time with a ready partner.',
    ],
    against: [],
    decibans: 14.4,
    lines: ['06:59:50 RO1 B links crossed'],
  },
  lookAlike: {
    name: 'they were crossed for ten minutes while the partner was ready',
    plus: ['06:10:00  RO1 B  links crossed', '06:20:00  RO1 B  links straight'],
    instead: 'too-little-data',
    against: ['The links are straight where they are reported.'],
    lines: ['06:00:00 RO1 A links straight'],
  },
  tooLittle: { name: 'nothing says how the links run', without: ['links'], names: 'links' },
});
