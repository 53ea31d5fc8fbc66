import { lightSteady } from '../../../src/verify/light-steady.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(lightSteady, [
  {
    name: 'steady one second past five minutes',
    status: 'fail',
    without: ['09:09:00'],
    plus: ['09:10:01  RO1 B  light steady'],
  },
  {
    name: 'steady at five minutes',
    status: 'pass',
    without: ['09:09:00'],
    plus: ['09:10:00  RO1 B  light steady'],
  },
  {
    name: 'the log ends after four minutes',
    status: 'inconclusive',
    without: ['09:09:00', '09:20', '09:45'],
    plus: ['09:09:00  RO1  configuration current'],
  },
  { name: 'no light is ever logged', status: 'not-observed', without: ['light'] },
]);
