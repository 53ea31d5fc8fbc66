import { firmwareDiffers } from '../../../src/diagnose/firmware-differs.ts';
import { checkCause } from '../../support/check-cause.ts';

/**
 * Three attempts failed, and once the partner was ready. So at all of the failed ones and at none of the ready: (3.5 / 4) to
 * (0.5 / 2) is 3.5 to 1, which is 5.4 decibans, and what the state weighs before any count.
 */
checkCause(firmwareDiffers, {
  shows: {
    name: 'the standby reports other firmware while attempts fail',
    plus: ['06:59:59  RO1 B  firmware 6.2.0'],
    for: [
      'Half B reports firmware 6.2.0, half A 6.4.1. This was so at 3 of 3 failed attempts and at 0 of 1 time with a ready partner.',
    ],
    against: [],
    decibans: 15.4,
    lines: ['06:59:59 RO1 B firmware 6.2.0', '06:00:00 RO1 A firmware 6.4.1'],
  },
  lookAlike: {
    name: 'it differed once, was reflashed, and attempts fail all the same',
    plus: ['06:59:59  RO1 B  firmware 6.2.0', '07:00:30  RO1 B  firmware 6.4.1'],
    instead: 'too-little-data',
    against: ['Both halves report firmware 6.4.1.'],
    lines: ['07:00:30 RO1 B firmware 6.4.1', '06:00:00 RO1 A firmware 6.4.1'],
  },
  tooLittle: {
    name: 'the standby never reports its firmware',
    without: ['RO1 B  firmware'],
    names: 'firmware',
  },
});
