import { supplyFault } from '../../../src/diagnose/supply-fault.ts';
import { checkCause } from '../../support/check-cause.ts';

/**
 * Three attempts failed, and once the partner was ready. So at all of the failed ones and at none of the ready: (3.5 / 4) to
 * (0.5 / 2) is 3.5 to 1, which is 5.4 decibans, and what the state weighs before any count.
 */
checkCause(supplyFault, {
  shows: {
    name: 'the supply is at fault all the while',
    plus: ['06:59:58  RO1 B  supply fault'],
    // Of the loss and three failures the loss came two seconds after; 30 s of the 3630 s from 06:59:30 on, four times, are 0.03.
    for: [
      '1 of 4 losses and failed attempts came within 30 s after a supply fault began; chance alone would give less than 0.1.',
      'The supply of half B is at fault. This was so at 3 of 3 failed attempts and at 0 of 1 time with a ready partner.',
    ],
    against: [],
    decibans: 14.4,
    lines: ['06:59:58 RO1 B supply fault', '07:00:00 RO1 partner not ready'],
  },
  lookAlike: {
    name: 'it was at fault for a minute, forty minutes before',
    plus: ['06:20:00  RO1 B  supply fault', '06:21:00  RO1 B  supply good'],
    instead: 'too-little-data',
    against: ['No supply is reported as at fault.'],
    lines: ['06:00:00 RO1 A supply good'],
  },
  tooLittle: { name: 'no supply is logged', without: ['supply'], names: 'supply' },
});
