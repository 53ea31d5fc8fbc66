import { readyBeforeSwitchover } from '../../../src/verify/ready-before-switchover.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(readyBeforeSwitchover, [
  { name: 'not ready at the switchover', status: 'fail', without: ['09:07:00'] },
  {
    name: 'ready for only half a minute',
    status: 'fail',
    without: ['09:07:00'],
    plus: ['09:19:31  RO1  partner ready'],
  },
  {
    name: 'ready for a minute',
    status: 'pass',
    without: ['09:07:00'],
    plus: ['09:19:01  RO1  partner ready'],
  },
  { name: 'no switchover in the swap', status: 'pass', without: ['09:20'] },
  { name: 'readiness is never logged', status: 'not-observed', without: ['partner'] },
]);
