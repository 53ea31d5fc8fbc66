import { linksCrossed } from '../../../src/diagnose/links-crossed.ts';
import { checkCause } from '../../support/check-cause.ts';

checkCause(linksCrossed, {
  shows: { name: 'the links are crossed all the while', plus: ['06:59:50  RO1 B  links crossed'] },
  lookAlike: {
    name: 'they were crossed for ten minutes while the partner was ready',
    plus: ['06:10:00  RO1 B  links crossed', '06:20:00  RO1 B  links straight'],
    instead: 'too-little-data',
  },
  tooLittle: { name: 'nothing says how the links run', without: ['links'], names: 'links' },
});
