import { identifiedStandby } from '../../../src/verify/identified-standby.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(
  identifiedStandby,
  {
    says: 'Half B took the standby role at its insertion.',
    lines: ['09:02:00 RO1 B module inserted', '09:02:00 RO1 B role standby'],
  },
  [
    {
      name: 'took the role sixteen minutes after the insertion',
      status: 'fail',
      without: ['09:02:00  RO1 B  role', '09:20:01'],
      plus: ['09:18:00  RO1 B  role standby'],
      says: 'Half B took the standby role 16 min 00 s after its insertion.',
      lines: ['09:02:00 RO1 B module inserted', '09:18:00 RO1 B role standby'],
    },
    {
      name: 'took the role fifteen minutes after the insertion',
      status: 'pass',
      without: ['09:02:00  RO1 B  role', '09:20:01'],
      plus: ['09:17:00  RO1 B  role standby'],
      says: 'Half B took the standby role 15 min 00 s after its insertion.',
      lines: ['09:02:00 RO1 B module inserted', '09:17:00 RO1 B role standby'],
    },
    {
      name: 'no role is ever logged',
      status: 'not-observed',
      without: ['role'],
      says: 'The role of half B was never logged.',
      lines: ['09:02:00 RO1 B module inserted'],
    },
  ],
);
