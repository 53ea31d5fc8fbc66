import { supplyFault } from '../../../src/diagnose/supply-fault.ts';
import { checkCause } from '../../support/check-cause.ts';

checkCause(supplyFault, {
  shows: { name: 'the supply is at fault all the while', plus: ['06:59:58  RO1 B  supply fault'] },
  lookAlike: {
    name: 'it was at fault for a minute, forty minutes before',
    plus: ['06:20:00  RO1 B  supply fault', '06:21:00  RO1 B  supply good'],
    instead: 'too-little-data',
  },
  tooLittle: { name: 'no supply is logged', without: ['supply'], names: 'supply' },
});
