import { soaked } from '../../../src/verify/soaked.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(
  soaked,
  {
    // Ready at 09:07, and that held: thirty minutes on is 09:37.
    says: 'The partner was ready without a break in the 30 minutes at the end.',
    lines: ['09:07:00 RO1 partner ready'],
  },
  [
    {
      name: 'lost ten minutes before the end',
      status: 'fail',
      plus: ['09:27:00  RO1  partner not ready', '09:28:00  RO1  partner ready'],
      says: 'The partner was not ready without a break in the 30 minutes at the end: it was lost.',
      lines: ['09:27:00 RO1 partner not ready'],
    },
    {
      name: 'not ready at the end',
      status: 'fail',
      plus: ['09:27:00  RO1  partner not ready'],
      says: 'At the end the partner is not ready.',
      lines: ['09:27:00 RO1 partner not ready'],
    },
    {
      name: 'the log ends after twenty minutes',
      status: 'inconclusive',
      without: ['09:45'],
      plus: ['09:27:00  RO1 A  light off'],
      says: 'The log ends 20 min 00 s after the last module had settled; 30 min 00 s are needed.',
      lines: ['09:07:00 RO1 partner ready'],
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
