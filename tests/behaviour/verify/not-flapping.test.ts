import { notFlapping } from '../../../src/verify/not-flapping.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(
  notFlapping,
  {
    says: 'The partner was not lost again.',
    lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
  },
  [
    {
      name: 'three losses within ten minutes',
      status: 'fail',
      plus: [
        '09:10:00  RO1  partner not ready',
        '09:11:00  RO1  partner ready',
        '09:13:00  RO1  partner not ready',
        '09:14:00  RO1  partner ready',
        '09:16:00  RO1  partner not ready',
        '09:17:00  RO1  partner ready',
      ],
      says: 'The standby was flapping: 3 losses in a row.',
      lines: [
        '09:10:00 RO1 partner not ready',
        '09:13:00 RO1 partner not ready',
        '09:16:00 RO1 partner not ready',
      ],
    },
    {
      name: 'one loss',
      status: 'pass',
      plus: ['09:10:00  RO1  partner not ready', '09:11:00  RO1  partner ready'],
      says: 'Losses that count: 1; too few for flapping.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'readiness is never logged',
      status: 'not-observed',
      without: ['partner'],
      says: 'Losses of the partner were never logged.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
  ],
);
