import { neverWithoutActive } from '../../../src/verify/never-without-active.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(neverWithoutActive, [
  {
    name: 'neither half active for two seconds',
    status: 'fail',
    without: ['09:20:01.1'],
    plus: ['09:20:03  RO1 B  role active'],
  },
  {
    name: 'both halves active for two seconds',
    status: 'fail',
    without: ['09:20:01  RO1 A'],
    plus: ['09:20:03.1  RO1 A  role standby'],
  },
  {
    name: 'neither half active for one second',
    status: 'pass',
    without: ['09:20:01.1'],
    plus: ['09:20:02  RO1 B  role active'],
  },
  { name: 'no role is ever logged', status: 'not-observed', without: ['role'] },
]);
