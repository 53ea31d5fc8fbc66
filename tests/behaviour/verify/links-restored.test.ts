import { linksRestored } from '../../../src/verify/links-restored.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(
  linksRestored,
  {
    says: 'At the end both links of both halves are up; whether they are crossed was not logged.',
    lines: [
      '08:40:00 RO1 A link a up',
      '08:40:00 RO1 B link a up',
      '08:40:00 RO1 A link b up',
      '08:40:00 RO1 B link b up',
    ],
  },
  [
    {
      name: 'a link is down at the end',
      status: 'fail',
      plus: ['09:03:00  RO1 B  link b down'],
      says: 'At the end link b of half B is down.',
      lines: ['09:03:00 RO1 B link b down'],
    },
    {
      name: 'down and up again',
      status: 'pass',
      plus: ['09:03:00  RO1 B  link b down', '09:04:00  RO1 B  link b up'],
      says: 'At the end both links of both halves are up',
      lines: [
        '08:40:00 RO1 A link a up',
        '08:40:00 RO1 B link a up',
        '08:40:00 RO1 A link b up',
        '09:04:00 RO1 B link b up',
      ],
    },
    {
      name: 'the two links are crossed',
      status: 'fail',
      plus: ['09:03:00  RO1 B  links crossed'],
      says: 'The two links of half B are crossed.',
      lines: ['09:03:00 RO1 B links crossed'],
    },
    {
      name: 'crossed, then put right',
      status: 'pass',
      plus: ['09:03:00  RO1 B  links crossed', '09:04:00  RO1 B  links straight'],
      says: 'At the end both links of both halves are up and not crossed.',
      lines: [
        '08:40:00 RO1 A link a up',
        '08:40:00 RO1 B link a up',
        '08:40:00 RO1 A link b up',
        '08:40:00 RO1 B link b up',
        '09:04:00 RO1 B links straight',
      ],
    },
    {
      name: 'one link is not known',
      status: 'inconclusive',
      without: ['A  link b'],
      says: 'Not known at the end: link b of half A.',
      lines: ['08:40:00 RO1 A link a up', '08:40:00 RO1 B link a up', '08:40:00 RO1 B link b up'],
    },
    {
      name: 'links are never logged',
      status: 'not-observed',
      without: ['link'],
      says: 'The links were never logged.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
  ],
);
