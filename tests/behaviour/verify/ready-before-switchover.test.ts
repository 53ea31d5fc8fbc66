import { readyBeforeSwitchover } from '../../../src/verify/ready-before-switchover.ts';
import { checkCheck } from '../../support/check-check.ts';

/** The lines of the switchover: who left, who took over, the command; then the one that says how ready the partner was. */
const switchover = [
  '09:20:01 RO1 A role standby',
  '09:20:01.1 RO1 B role active',
  '09:20:00 RO1 switchover command',
];

checkCheck(
  readyBeforeSwitchover,
  {
    // From 09:07:00 to 09:20:01.
    says: 'Before the switchover to half B the partner had been ready for 13 min 01 s.',
    lines: [...switchover, '09:07:00 RO1 partner ready'],
  },
  [
    {
      name: 'not ready at the switchover',
      status: 'fail',
      without: ['09:07:00'],
      says: 'The switchover to half B came while the partner was not ready.',
      lines: [...switchover, '09:00:00 RO1 partner not ready'],
    },
    {
      name: 'ready for only half a minute',
      status: 'fail',
      without: ['09:07:00'],
      plus: ['09:19:31  RO1  partner ready'],
      says: 'Before the switchover to half B the partner had been ready for 30 s. It must have held 1 min 00 s.',
      lines: [...switchover, '09:19:31 RO1 partner ready'],
    },
    {
      name: 'ready for a minute',
      status: 'pass',
      without: ['09:07:00'],
      plus: ['09:19:01  RO1  partner ready'],
      says: 'Before the switchover to half B the partner had been ready for 1 min 00 s.',
      lines: [...switchover, '09:19:01 RO1 partner ready'],
    },
    {
      name: 'no switchover in the swap',
      status: 'pass',
      without: ['09:20'],
      says: 'There was none: no switchover in this swap.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'readiness is never logged',
      status: 'not-observed',
      without: ['partner'],
      says: 'Whether the partner was ready before the switchover to half B is not known.',
      lines: switchover,
    },
  ],
);
