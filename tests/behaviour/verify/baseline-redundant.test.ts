import { baselineRedundant } from '../../../src/verify/baseline-redundant.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(baselineRedundant, [
  {
    name: 'lost ten minutes before the removal',
    status: 'fail',
    plus: ['08:50:00  RO1  partner not ready', '08:51:00  RO1  partner ready'],
  },
  {
    name: 'not ready when the fifteen minutes begin',
    status: 'fail',
    plus: ['08:41:00  RO1  partner not ready', '08:46:00  RO1  partner ready'],
  },
  {
    name: 'lost and back before the fifteen minutes',
    status: 'pass',
    plus: ['08:41:00  RO1  partner not ready', '08:44:00  RO1  partner ready'],
  },
  {
    name: 'the log begins five minutes before the removal',
    status: 'inconclusive',
    without: ['08:40:00'],
    plus: ['08:55:00  RO1  partner ready', '08:55:00  RO1 B  serial T2-1'],
  },
  { name: 'readiness is never logged', status: 'not-observed', without: ['partner'] },
]);
