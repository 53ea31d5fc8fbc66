import { abortsAtFixedTime } from '../../../src/diagnose/aborts-at-fixed-time.ts';
import { checkCause } from '../../support/check-cause.ts';

function attempt(begun: string, ended: string): readonly string[] {
  return [`${begun}  RO1 B  sync start`, `${ended}  RO1 B  sync failed`];
}

checkCause(abortsAtFixedTime, {
  shows: {
    name: 'five attempts fail after two minutes, give or take a second',
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
    name: 'five attempts fail after one to six minutes',
    plus: [...attempt('07:15:00', '07:18:00'), ...attempt('07:25:00', '07:27:20')],
    instead: 'too-little-data',
    // 70, 330, 40, 180 and 140 s: the middle is 140, and they are 0, 40, 70, 100 and 190 s from it.
    against: ['5 syncs failed after a median of 2 min 20 s, half of them within 1 min 10 s of it.'],
  },
  tooLittle: {
    name: 'two attempts fail after two minutes',
    without: ['sync'],
    plus: [...attempt('07:01:00', '07:03:00'), ...attempt('07:05:00', '07:07:00')],
    names: 'load',
    against: ['Only 2 failed syncs were logged; a pattern needs 3.'],
    lines: ['07:00:00 RO1 partner not ready', '08:00:00 RO1 A light off'],
  },
});
