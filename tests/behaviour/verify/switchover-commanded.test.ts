import { switchoverCommanded } from '../../../src/verify/switchover-commanded.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(switchoverCommanded, [
  {
    name: 'the command came after the switchover',
    status: 'fail',
    without: ['command'],
    plus: ['09:30:00  RO1  switchover command'],
  },
  { name: 'no switchover in the swap', status: 'pass', without: ['09:20:01'] },
  { name: 'no log ever records a command', status: 'not-observed', without: ['command'] },
]);
