import { notFlapping } from '../../../src/verify/not-flapping.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(notFlapping, [
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
  },
  {
    name: 'one loss',
    status: 'pass',
    plus: ['09:10:00  RO1  partner not ready', '09:11:00  RO1  partner ready'],
  },
  { name: 'readiness is never logged', status: 'not-observed', without: ['partner'] },
]);
