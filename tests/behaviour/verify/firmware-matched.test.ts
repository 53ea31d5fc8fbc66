import { firmwareMatched } from '../../../src/verify/firmware-matched.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(firmwareMatched, [
  {
    name: 'the standby was never reflashed',
    status: 'fail',
    without: ['09:05:00  RO1 B  firmware', 'reflash'],
  },
  {
    name: 'matched at the end, but not at the switchover',
    status: 'fail',
    without: ['09:05:00  RO1 B  firmware', 'reflash'],
    plus: ['09:25:00  RO1 B  firmware 6.4.1'],
  },
  { name: 'the firmware of one half is not known', status: 'inconclusive', without: ['A  firmware'] },
  { name: 'firmware is never logged', status: 'not-observed', without: ['firmware'] },
]);
