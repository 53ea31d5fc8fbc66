import { removedStandby } from '../../../src/verify/removed-standby.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(
  removedStandby,
  {
    says: 'Half B was standby when it was removed.',
    lines: ['08:40:00 RO1 B role standby', '09:00:00 RO1 B module removed'],
  },
  [
    {
      name: 'the active half was pulled',
      status: 'fail',
      without: ['08:40:00  RO1 A  role', '08:40:00  RO1 B  role'],
      plus: ['08:40:00  RO1 A  role standby', '08:40:00  RO1 B  role active'],
      says: 'Half B was active when it was removed.',
      lines: ['08:40:00 RO1 B role active', '09:00:00 RO1 B module removed'],
    },
    {
      name: 'no role is ever logged',
      status: 'not-observed',
      without: ['role'],
      says: 'The role of half B at its removal was never logged.',
      lines: ['09:00:00 RO1 B module removed'],
    },
  ],
);
