import { baselineRedundant } from '../../../src/verify/baseline-redundant.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(
  baselineRedundant,
  {
    says: 'The partner was ready without a break in the 15 minutes before the first removal.',
    lines: ['08:40:00 RO1 partner ready', '09:00:00 RO1 partner not ready'],
  },
  [
    {
      name: 'lost ten minutes before the removal',
      status: 'fail',
      plus: ['08:50:00  RO1  partner not ready', '08:51:00  RO1  partner ready'],
      says: 'The partner was not ready without a break in the 15 minutes before the first removal: it was lost.',
      lines: ['08:50:00 RO1 partner not ready'],
    },
    {
      name: 'not ready when the fifteen minutes begin',
      status: 'fail',
      plus: ['08:41:00  RO1  partner not ready', '08:46:00  RO1  partner ready'],
      says: 'The partner was not ready at the begin of the time in the 15 minutes before the first removal.',
      lines: ['08:41:00 RO1 partner not ready'],
    },
    {
      name: 'lost and back before the fifteen minutes',
      status: 'pass',
      plus: ['08:41:00  RO1  partner not ready', '08:44:00  RO1  partner ready'],
      says: 'The partner was ready without a break',
      lines: ['08:44:00 RO1 partner ready', '09:00:00 RO1 partner not ready'],
    },
    {
      name: 'the log begins five minutes before the removal',
      status: 'inconclusive',
      without: ['08:40:00'],
      plus: ['08:55:00  RO1  partner ready', '08:55:00  RO1 B  serial T2-1'],
      says: 'The log begins only 5 min 00 s before; 15 min 00 s in the 15 minutes before the first removal are needed.',
      lines: ['08:55:00 RO1 partner ready', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'readiness is never logged',
      status: 'not-observed',
      without: ['partner'],
      says: 'Readiness of the partner was never logged.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
  ],
);
