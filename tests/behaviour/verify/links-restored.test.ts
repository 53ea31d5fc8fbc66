import { linksRestored } from '../../../src/verify/links-restored.ts';
import { checkCheck } from '../../support/check-check.ts';

checkCheck(linksRestored, [
  { name: 'a link is down at the end', status: 'fail', plus: ['09:03:00  RO1 B  link b down'] },
  {
    name: 'down and up again',
    status: 'pass',
    plus: ['09:03:00  RO1 B  link b down', '09:04:00  RO1 B  link b up'],
  },
  { name: 'the two links are crossed', status: 'fail', plus: ['09:03:00  RO1 B  links crossed'] },
  { name: 'one link is not known', status: 'inconclusive', without: ['A  link b'] },
  { name: 'links are never logged', status: 'not-observed', without: ['link'] },
]);
