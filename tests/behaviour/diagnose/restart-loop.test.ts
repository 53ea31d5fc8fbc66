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
  },
  lookAlike: {
    name: 'as many restarts without a rhythm',
    without: ['sync'],
    plus: restartsAt('07:00:00', '07:01:10', '07:09:00', '07:12:00', '07:31:00', '07:33:30'),
    instead: 'too-little-data',
  },
  tooLittle: {
    name: 'two restarts only',
    without: ['sync'],
    plus: restartsAt('07:00:00', '07:03:20'),
    names: 'load',
  },
});
