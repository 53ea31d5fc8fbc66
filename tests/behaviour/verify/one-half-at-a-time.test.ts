import { oneHalfAtATime } from '../../../src/verify/one-half-at-a-time.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(oneHalfAtATime, [
  {
    name: 'the second was pulled while the first was out',
    status: 'fail',
    plus: [
      '08:40:00  RO1 A  serial T2-9',
      '09:01:00  RO1 A  module removed',
      '09:30:00  RO1 A  module inserted',
      '09:30:00  RO1 A  serial T4-9',
    ],
  },
  {
    name: 'the second was pulled before the first had settled',
    status: 'fail',
    plus: [
      '08:40:00  RO1 A  serial T2-9',
      '09:06:00  RO1 A  module removed',
      '09:30:00  RO1 A  module inserted',
      '09:30:00  RO1 A  serial T4-9',
    ],
  },
  {
    name: 'the second was pulled after the first had settled',
    status: 'pass',
    plus: [
      '08:40:00  RO1 A  serial T2-9',
      '09:22:00  RO1 A  module removed',
      '09:30:00  RO1 A  module inserted',
      '09:30:00  RO1 A  serial T4-9',
    ],
  },
  {
    name: 'whether the first had settled is never logged',
    status: 'not-observed',
    without: ['partner'],
    plus: [
      '08:40:00  RO1 A  serial T2-9',
      '09:22:00  RO1 A  module removed',
      '09:30:00  RO1 A  module inserted',
      '09:30:00  RO1 A  serial T4-9',
    ],
  },
]);
