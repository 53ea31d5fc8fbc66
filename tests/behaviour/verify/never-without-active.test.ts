import { neverWithoutActive } from '../../../src/verify/never-without-active.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(
  neverWithoutActive,
  {
    says: 'One half, and only one, was active throughout; at a switchover at most 0.1 s without one can be hidden.',
    lines: [
      '09:20:01 RO1 A role standby',
      '09:20:01.1 RO1 B role active',
      '09:20:00 RO1 switchover command',
      '09:07:00 RO1 partner ready',
    ],
  },
  [
    {
      name: 'neither half active for two seconds',
      status: 'fail',
      without: ['09:20:01.1'],
      plus: ['09:20:03  RO1 B  role active'],
      says: 'Neither half was active for 2.0 s.',
      lines: ['09:20:01 RO1 A role standby', '09:20:03 RO1 B role active'],
    },
    {
      name: 'both halves active for two seconds',
      status: 'fail',
      without: ['09:20:01  RO1 A'],
      plus: ['09:20:03.1  RO1 A  role standby'],
      says: 'Both halves were active for 2.0 s.',
      lines: ['09:20:01.1 RO1 B role active', '09:20:03.1 RO1 A role standby'],
    },
    {
      name: 'neither half active for one second',
      status: 'pass',
      without: ['09:20:01.1'],
      plus: ['09:20:02  RO1 B  role active'],
      says: 'One half, and only one, was active throughout; at a switchover at most 1.0 s without one can be hidden.',
      lines: [
        '09:20:01 RO1 A role standby',
        '09:20:02 RO1 B role active',
        '09:20:00 RO1 switchover command',
        '09:07:00 RO1 partner ready',
      ],
    },
    {
      name: 'no switchover',
      status: 'pass',
      without: ['09:20'],
      says: 'One half, and only one, was active throughout.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'no role is ever logged',
      status: 'not-observed',
      without: ['role'],
      says: 'The roles of both halves were never logged.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
  ],
);
