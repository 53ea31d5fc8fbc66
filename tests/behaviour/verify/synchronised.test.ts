import { synchronised } from '../../../src/verify/synchronised.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(synchronised, [
  {
    name: 'ready only after sixteen minutes',
    status: 'fail',
    without: ['09:07:00', '09:20'],
    plus: ['09:21:00  RO1  partner ready'],
  },
  {
    name: 'ready after fifteen minutes',
    status: 'pass',
    without: ['09:07:00', '09:20'],
    plus: ['09:20:00  RO1  partner ready'],
  },
  { name: 'never ready, watched for forty minutes', status: 'fail', without: ['09:07:00', '09:20'] },
  {
    name: 'ready, but lost after half a minute',
    status: 'fail',
    without: ['09:20'],
    plus: ['09:07:30  RO1  partner not ready'],
  },
  {
    name: 'the log ends before fifteen minutes',
    status: 'inconclusive',
    without: ['09:07:00', '09:09:00', '09:20', '09:45'],
    plus: ['09:12:00  RO1  configuration current'],
  },
  { name: 'readiness is never logged', status: 'not-observed', without: ['partner'] },
]);
