import { firmwareDiffers } from '../../../src/diagnose/firmware-differs.ts';
import { checkCause } from '../../support/check-cause.ts';

checkCause(firmwareDiffers, {
  shows: {
    name: 'the standby reports other firmware while attempts fail',
    plus: ['06:59:59  RO1 B  firmware 6.2.0'],
  },
  lookAlike: {
    name: 'it differed once, was reflashed, and attempts fail all the same',
    plus: ['06:59:59  RO1 B  firmware 6.2.0', '07:00:30  RO1 B  firmware 6.4.1'],
    instead: 'too-little-data',
  },
  tooLittle: {
    name: 'the standby never reports its firmware',
    without: ['RO1 B  firmware'],
    names: 'firmware',
  },
});
