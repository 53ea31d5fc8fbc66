import { configurationCurrent } from '../../../src/verify/configuration-current.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(configurationCurrent, [
  {
    name: 'pending at the end',
    status: 'fail',
    without: ['09:45'],
    plus: ['09:25:00  RO1  configuration pending', '09:45:00  RO1 A  light off'],
  },
  {
    name: 'pending, then sent',
    status: 'pass',
    plus: ['09:25:00  RO1  configuration pending', '09:30:00  RO1  configuration current'],
  },
  {
    name: 'never logged',
    status: 'not-observed',
    without: ['configuration'],
    plus: ['09:45:00  RO1 A  light off'],
  },
]);
