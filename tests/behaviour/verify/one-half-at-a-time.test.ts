import { oneHalfAtATime } from '../../../src/verify/one-half-at-a-time.ts';
import { checkCheck } from '../../support/check-check.ts';
import { type Polled, pollText, row } from '../../support/clean-swap.ts';

/** Half A is replaced too: pulled at a time, and another serial in its place at 09:30. */
const halfA = (pulled: string): readonly string[] => [
  '08:40:00 RO1 A  serial T2-9',
  `${pulled}  RO1 A  module removed`,
  '09:30:00  RO1 A  module inserted',
  '09:30:00  RO1 A  serial T4-9',
];
const halfB = ['09:00:00 RO1 B module removed', '09:02:00 RO1 B module inserted'];

const blankA: Polled = ['RO1-A', 'serial', ['08:40:00', 'T2-9'], ['08:58:00', '']];

/** Readiness polled every 10 s, but not from 08:50:10 to a clock, from which on it is as given. */
const unseenUntil = (clock: string, before: string, value: string): Readonly<Record<string, string>> => ({
  'poll.csv': pollText(
    ['08:40:00', '09:50:00'],
    10,
    [['RO1', 'partner-ready', ['08:40:00', 'yes'], ['08:50:00', before], [clock, value]]],
    [['08:50:10', `${clock.slice(0, 3)}${Number(clock.slice(3, 5)) - 1}:50`]],
  ),
});
checkCheck(oneHalfAtATime, { says: 'Only half B was replaced.', lines: halfB }, [
  {
    name: 'nothing was put in yet',
    status: 'pass',
    without: ['09:0', '09:20', '09:45'],
    plus: ['09:00:00  RO1 B  module removed', '09:05:00  RO1  configuration current'],
    says: 'Only half B was removed.',
    lines: ['09:00:00 RO1 B module removed'],
  },
  {
    name: 'the second was pulled while the first was out',
    status: 'fail',
    plus: halfA('09:01:00'),
    says: 'Half A was removed while half B was still out.',
    lines: [...halfB, '09:01:00 RO1 A module removed'],
  },
  {
    name: 'the module of the other half was out for a minute, and is no other, while the first was out',
    status: 'fail',
    plus: ['09:00:30 RO1 A module removed', '09:01:30 RO1 A module inserted'],
    says: 'Half A was removed while half B was still out.',
    lines: [...halfB, '09:00:30 RO1 A module removed'],
  },
  {
    name: 'the other came and went unseen, perhaps before',
    status: 'inconclusive',
    // Half A was another module at 09:01 than at 08:40: out and back at any time between, half B was out from 09:00 on.
    plus: ['08:40:00 RO1 A  serial T2-9', '09:01:00  RO1 A  serial T4-9'],
    says: 'The logs do not show whether half A was back before half B was removed.',
    lines: [...halfB, '09:01:00 RO1 A serial T4-9'],
  },
  {
    name: 'the second was pulled at the stamp at which the first came back',
    status: 'fail',
    plus: halfA('09:02:00'),
    says: 'Half A was removed before half B had settled.',
    lines: [...halfB, '09:02:00 RO1 A module removed'],
  },
  {
    name: 'the second was pulled before the first had settled',
    status: 'fail',
    plus: halfA('09:06:00'),
    says: 'Half A was removed before half B had settled.',
    lines: [...halfB, '09:06:00 RO1 A module removed'],
  },
  {
    name: 'the second was pulled after the first had settled',
    status: 'pass',
    plus: halfA('09:22:00'),
    says: 'Half A was removed only after half B had settled.',
    lines: [...halfB, '09:22:00 RO1 A module removed'],
  },
  {
    name: 'whether the first had settled is never logged',
    status: 'not-observed',
    without: ['partner'],
    plus: halfA('09:22:00'),
    says: 'Whether half B had settled was never logged.',
    lines: ['09:22:00 RO1 A module removed'],
  },
  {
    // Half B came up from 09:05 on, half A was pulled at 09:22: of readiness nothing was read from 08:50:00 to 09:35:00.
    name: 'the first may have settled while readiness was not read: ready afterwards',
    status: 'inconclusive',
    without: ['partner'],
    plus: halfA('09:22:00'),
    files: unseenUntil('09:35:00', 'no', 'yes'),
    says: 'The logs do not show whether half B had settled before half A was removed.',
    lines: [...halfB, '09:22:00 RO1 A module removed'],
  },
  {
    // The same, read as ready up to 08:50:00, with the old module, and as not ready at 09:25:00, half A pulled.
    name: 'the first may have settled while readiness was not read: not ready afterwards',
    status: 'inconclusive',
    without: ['partner'],
    plus: halfA('09:22:00'),
    files: unseenUntil('09:25:00', 'yes', 'no'),
    says: 'The logs do not show whether half B had settled before half A was removed.',
    lines: [...halfB, '09:22:00 RO1 A module removed'],
  },
  {
    name: 'the other half was out for a minute before, and whether it settled is never logged',
    status: 'not-observed',
    without: ['partner'],
    plus: ['08:45:00 RO1 A module removed', '08:46:00 RO1 A module inserted'],
    says: 'Whether half A had settled was never logged.',
    lines: ['09:00:00 RO1 B module removed'],
  },
  {
    name: 'the other half was out for a minute before, with a ready partner all the time',
    status: 'pass',
    plus: ['08:45:00 RO1 A module removed', '08:46:00 RO1 A module inserted'],
    says: 'Only half B was replaced.',
    lines: halfB,
  },
  {
    // Lost for 20 s: half A was ready for 14 min 40 s when half B was removed.
    name: 'the other half was out for a minute before, and settled',
    status: 'pass',
    plus: [
      '08:45:00  RO1 A  module removed',
      '08:45:00  RO1    partner not ready',
      '08:45:10  RO1 A  module inserted',
      '08:45:20  RO1    partner ready',
    ],
    says: 'Half B was removed only after half A had settled.',
    lines: ['08:45:00 RO1 A module removed', '08:45:10 RO1 A module inserted', halfB[0] ?? ''],
  },
  {
    name: 'the other half was out for half a minute while the new module came up',
    status: 'fail',
    plus: ['09:04:00 RO1 A module removed', '09:04:30 RO1 A module inserted'],
    says: 'Half A was removed before half B had settled.',
    lines: [...halfB, '09:04:00 RO1 A module removed'],
  },
  {
    // Half A reports nothing from (08:57:50, 08:58:00] on, to the end of the log.
    name: 'the other half went blank in a poll before, and stays so',
    status: 'inconclusive',
    files: { 'poll.csv': pollText(['08:40:00', '09:50:00'], 10, [blankA]) },
    says: 'Half A stopped reporting and was not seen again; the logs do not show whether it was removed.',
    lines: [row('08:58:00', 'RO1-A', 'serial', ''), '09:00:00 RO1 B module removed'],
  },
  {
    name: 'the new module was itself replaced',
    status: 'pass',
    without: ['09:20'],
    plus: [
      '09:30:00  RO1 B  module removed',
      '09:32:00  RO1 B  module inserted',
      '09:32:00  RO1 B  serial T4-3',
    ],
    says: 'Only half B was replaced.',
    lines: [...halfB, '09:30:00 RO1 B module removed', '09:32:00 RO1 B module inserted'],
  },
  {
    name: 'half B settled after a restart before its removal, but not after its insertion',
    status: 'fail',
    plus: [
      '08:42:00  RO1 B  module restart',
      '08:42:00  RO1    partner not ready',
      '08:43:00  RO1    partner ready',
      ...halfA('09:06:00'),
    ],
    says: 'Half A was removed before half B had settled.',
    lines: [...halfB, '09:06:00 RO1 A module removed'],
  },
]);
