import { switchoverCommanded } from '../../../src/verify/switchover-commanded.ts';
import { checkCheck } from '../../support/check-check.ts';

/** Who left, and who took over. */
const roles = ['09:20:01 RO1 A role standby', '09:20:01.1 RO1 B role active'];

checkCheck(
  switchoverCommanded,
  {
    says: 'The switchover to half B was commanded.',
    lines: [...roles, '09:20:00 RO1 switchover command', '09:07:00 RO1 partner ready'],
  },
  [
    {
      name: 'the command came after the switchover',
      status: 'fail',
      without: ['command'],
      plus: ['09:30:00  RO1  switchover command'],
      says: 'The switchover to half B came by itself.',
      lines: [...roles, '09:07:00 RO1 partner ready'],
    },
    {
      name: 'no switchover in the swap',
      status: 'pass',
      without: ['09:20:01'],
      says: 'There was none: no switchover in this swap.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'no log ever records a command',
      status: 'not-observed',
      without: ['command'],
      says: 'None of these logs ever records a switchover command.',
      lines: [...roles, '09:07:00 RO1 partner ready'],
    },
  ],
);
