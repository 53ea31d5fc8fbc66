import { oneHalfAtATime } from '../../../src/verify/one-half-at-a-time.ts';
import { checkCheck } from '../../support/check-check.ts';
import { pollText, row } from '../../support/clean-swap.ts';

/** Half A is replaced too: pulled at a time, and another serial in its place at 09:30. */
const halfA = (pulled: string): readonly string[] => [
  '08:40:00 RO1 A  serial T2-9',
  `${pulled}  RO1 A  module removed`,
  '09:30:00  RO1 A  module inserted',
  '09:30:00  RO1 A  serial T4-9',
];
const halfB = ['09:00:00 RO1 B module removed', '09:02:00 RO1 B module inserted'];

/** Half B out from 09:00 to 09:02 and ready at 09:06; of half A nothing is read from a clock on. */
function stopping(clock: string): string {
  return pollText(['08:40:00', '09:40:00'], 10, [
    ['RO1', 'partner-ready', ['08:40:00', 'yes'], ['09:00:00', 'no'], ['09:06:00', 'yes']],
    ['RO1-A', 'serial', ['08:40:00', 'T2-9'], [clock, '']],
    ['RO1-B', 'serial', ['08:40:00', 'T2-1'], ['09:00:00', ''], ['09:02:00', 'T4-2']],
  ]);
}

/** The readiness of the partner read every so many seconds: no from 09:00 to 09:29. */
const notReadyEvery = (seconds: number): Readonly<Record<string, string>> => ({
  'poll.csv': pollText(['08:40:00', '09:50:00'], seconds, [
    ['RO1', 'partner-ready', ['08:40:00', 'yes'], ['09:00:00', 'no'], ['09:30:00', 'yes']],
  ]),
});

checkCheck(oneHalfAtATime, { says: 'Only half B was replaced.', lines: halfB }, [
  {
    name: 'the second was pulled before the first had settled',
    status: 'fail',
    plus: halfA('09:06:00'),
    says: 'Half A was removed before half B had settled.',
    lines: [...halfB, '09:06:00 RO1 A module removed'],
  },
  {
    name: 'the second was pulled while a poll read every minute that the first was not ready',
    status: 'fail',
    without: ['partner'],
    plus: halfA('09:07:00'),
    files: notReadyEvery(60),
    says: 'Half A was removed before half B had settled.',
    lines: [...halfB, '09:07:00 RO1 A module removed'],
  },
  {
    // Between the looks at 09:06:00 and 09:08:00 half B may have been ready for a minute before 09:07:01.
    name: 'the same with a look every two minutes, between which it may have held',
    status: 'inconclusive',
    without: ['partner'],
    plus: halfA('09:07:01'),
    files: notReadyEvery(120),
    says: 'The logs do not show whether half B had settled before half A was removed.',
    lines: [...halfB, '09:07:01 RO1 A module removed'],
  },
  {
    // Half B is back, and half A out, in (09:02:00, 09:02:10].
    name: 'polled every 10 s, one came back and the other went between two readings',
    status: 'inconclusive',
    isAlone: true,
    files: {
      'poll.csv': pollText(['08:40:00', '09:40:00'], 10, [
        ['RO1', 'partner-ready', ['08:40:00', 'yes'], ['09:00:00', 'no'], ['09:30:00', 'yes']],
        ['RO1-A', 'serial', ['08:40:00', 'T2-9'], ['09:02:08', ''], ['09:20:00', 'T4-9']],
        ['RO1-B', 'serial', ['08:40:00', 'T2-1'], ['09:00:00', ''], ['09:02:05', 'T4-2']],
      ]),
    },
    says: 'The logs do not show whether half B was back before half A was removed.',
    lines: [
      row('09:00:00', 'RO1-B', 'serial', ''),
      row('09:02:10', 'RO1-B', 'serial', 'T4-2'),
      row('09:02:10', 'RO1-A', 'serial', ''),
    ],
  },
  {
    // Half B was not ready before 09:05:50. Of half A nothing is read from 09:05 on.
    name: 'polled every 10 s, the other half stopped reporting before the first had settled, and was not seen again',
    status: 'inconclusive',
    isAlone: true,
    files: { 'poll.csv': stopping('09:05:00') },
    says: 'Half A stopped reporting and was not seen again; the logs do not show whether it was removed.',
    lines: [
      row('09:00:00', 'RO1-B', 'serial', ''),
      row('09:02:00', 'RO1-B', 'serial', 'T4-2'),
      row('09:05:00', 'RO1-A', 'serial', ''),
    ],
  },
  {
    // Ready from 09:06 on, so that half B had settled long before 09:30, removed or not.
    name: 'polled every 10 s, the other half stopped reporting after the first had settled',
    status: 'pass',
    isAlone: true,
    files: { 'poll.csv': stopping('09:30:00') },
    says: 'Only half B was replaced.',
    lines: [row('09:00:00', 'RO1-B', 'serial', ''), row('09:02:00', 'RO1-B', 'serial', 'T4-2')],
  },
  {
    // Half B was exchanged while nothing was read, from 08:50 to 09:20: it had 30 minutes to settle. Half A is out in (09:20:00, 09:20:10].
    name: 'polled every 10 s, all of the first replacement lies where nothing was read, and the other went just after it',
    status: 'inconclusive',
    isAlone: true,
    files: {
      'poll.csv': pollText(
        ['08:40:00', '09:40:00'],
        10,
        [
          ['RO1', 'partner-ready', ['08:40:00', 'yes'], ['09:20:10', 'no'], ['09:30:00', 'yes']],
          ['RO1-A', 'serial', ['08:40:00', 'T2-9'], ['09:20:10', ''], ['09:25:00', 'T4-9']],
          ['RO1-B', 'serial', ['08:40:00', 'T2-1'], ['09:00:00', 'T4-2']],
        ],
        [['08:50:10', '09:19:50']],
      ),
    },
    says: 'The logs do not show whether half B had settled before half A was removed.',
    lines: [row('09:20:00', 'RO1-B', 'serial', 'T4-2'), row('09:20:10', 'RO1-A', 'serial', '')],
  },
]);
