import { removedStandby } from '../../../src/verify/removed-standby.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(removedStandby, [
  {
    name: 'the active half was pulled',
    status: 'fail',
    without: ['08:40:00  RO1 A  role', '08:40:00  RO1 B  role'],
    plus: ['08:40:00  RO1 A  role standby', '08:40:00  RO1 B  role active'],
  },
  { name: 'no role is ever logged', status: 'not-observed', without: ['role'] },
]);
