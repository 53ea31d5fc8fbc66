import { soaked } from '../../../src/verify/soaked.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(soaked, [
  {
    name: 'lost ten minutes before the end',
    status: 'fail',
    plus: ['09:27:00  RO1  partner not ready', '09:28:00  RO1  partner ready'],
  },
  { name: 'not ready at the end', status: 'fail', plus: ['09:27:00  RO1  partner not ready'] },
  {
    name: 'the log ends after twenty minutes',
    status: 'inconclusive',
    without: ['09:45'],
    plus: ['09:27:00  RO1 A  light off'],
  },
  { name: 'readiness is never logged', status: 'not-observed', without: ['partner'] },
]);
