import { lightSteady } from '../../../src/verify/light-steady.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(
  lightSteady,
  {
    says: 'The light of half B was steady after 4 min 00 s; the limit is 5 min 00 s.',
    lines: ['09:05:00 RO1 B reflash end', '09:09:00 RO1 B light steady'],
  },
  [
    {
      name: 'steady one second past five minutes',
      status: 'fail',
      without: ['09:09:00'],
      plus: ['09:10:01  RO1 B  light steady'],
      says: 'The light of half B was steady after 5 min 01 s; the limit is 5 min 00 s.',
      lines: ['09:05:00 RO1 B reflash end', '09:10:01 RO1 B light steady'],
    },
    {
      name: 'steady at five minutes',
      status: 'pass',
      without: ['09:09:00'],
      plus: ['09:10:00  RO1 B  light steady'],
      says: 'The light of half B was steady after 5 min 00 s; the limit is 5 min 00 s.',
      lines: ['09:05:00 RO1 B reflash end', '09:10:00 RO1 B light steady'],
    },
    {
      name: 'the log ends after four minutes',
      status: 'inconclusive',
      without: ['09:09:00', '09:20', '09:45'],
      plus: ['09:09:00  RO1  configuration current'],
      says: 'The light of half B was not steady in the 4 min 00 s it was watched; the limit is 5 min 00 s.',
      lines: ['09:05:00 RO1 B reflash end', '09:09:00 RO1 configuration current'],
    },
    {
      name: 'no light is ever logged',
      status: 'not-observed',
      without: ['light'],
      says: 'The light of half B after its start was never logged.',
      lines: ['09:05:00 RO1 B reflash end'],
    },
  ],
);
