import { restartLoop } from '../../../src/diagnose/restart-loop.ts';
import { checkCause } from '../../support/check-cause.ts';

function restartsAt(...clocks: readonly string[]): readonly string[] {
  return clocks.map((clock) => `${clock}  RO1 B  module restart`);
}

checkCause(restartLoop, {
  shows: {
    name: 'a restart every 200 s, give or take one',
    without: ['sync'],
    plus: restartsAt('07:00:00', '07:03:20', '07:06:41', '07:10:00', '07:13:20', '07:16:41'),
    // 200, 201, 199, 200 and 201 s apart.
    for: [
      'Half B restarted 6 times, with a median of 3 min 20 s between two, half of them within 1.0 s of it.',
    ],
    against: [],
  },
  lookAlike: {
    name: 'as many restarts without a rhythm',
    without: ['sync'],
    plus: restartsAt('07:00:00', '07:01:10', '07:09:00', '07:12:00', '07:31:00', '07:33:30'),
    instead: 'too-little-data',
    // 70, 480, 180, 1140 and 150 s apart: the middle is 180, and they are 0, 30, 110, 300 and 960 s from it.
    against: [
      'Half B restarted 6 times, with a median of 3 min 00 s between two, half of them within 1 min 50 s of it.',
    ],
  },
  tooLittle: {
    name: 'two restarts only',
    without: ['sync'],
    plus: restartsAt('07:00:00', '07:03:20'),
    names: 'load',
    against: ['Half B restarted 2 times: too few for a loop.'],
    lines: ['07:00:00 RO1 B module restart', '07:03:20 RO1 B module restart'],
  },
});
