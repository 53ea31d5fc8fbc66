import { linkDown } from '../../../src/diagnose/link-down.ts';
import { checkCause } from '../../support/check-cause.ts';

checkCause(linkDown, {
  shows: {
    name: 'link a goes down seconds before each failure',
    plus: ['06:59:56', '07:02:08', '07:09:27', '07:12:38'].flatMap((at, index) => [
      `${at}  RO1 B  link a down`,
      `${['07:00:30', '07:02:30', '07:09:50', '07:13:00'][index]}  RO1 B  link a up`,
    ]),
  },
  lookAlike: {
    name: 'link a goes down as often, at other times',
    plus: ['06:20', '07:03', '07:25', '07:40'].flatMap((at) => [
      `${at}:00  RO1 B  link a down`,
      `${at}:10  RO1 B  link a up`,
    ]),
    instead: 'too-little-data',
  },
  tooLittle: { name: 'no link is logged', without: ['link a', 'link b'], names: 'link-a' },
});
