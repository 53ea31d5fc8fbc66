import { abortsAtFixedTime } from '../../../src/diagnose/aborts-at-fixed-time.ts';
import { checkCause } from '../../support/check-cause.ts';

function attempt(begun: string, ended: string): readonly string[] {
  return [`${begun}  RO1 B  sync start`, `${ended}  RO1 B  sync failed`];
}

checkCause(abortsAtFixedTime, {
  shows: {
    name: 'five attempts give up after two minutes, give or take a second',
    without: ['sync'],
    plus: [
      ...attempt('07:01:00', '07:03:00'),
      ...attempt('07:05:00', '07:07:01'),
      ...attempt('07:12:00', '07:14:00'),
      ...attempt('07:15:00', '07:16:59'),
      ...attempt('07:25:00', '07:27:00'),
    ],
  },
  lookAlike: {
    name: 'five attempts give up after one to six minutes',
    plus: [...attempt('07:15:00', '07:18:00'), ...attempt('07:25:00', '07:27:20')],
    instead: 'too-little-data',
  },
  tooLittle: {
    name: 'two attempts give up after two minutes',
    without: ['sync'],
    plus: [...attempt('07:01:00', '07:03:00'), ...attempt('07:05:00', '07:07:00')],
    names: 'load',
  },
});
