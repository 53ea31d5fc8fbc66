import { readyBeforeSwitchover } from '../../../src/verify/ready-before-switchover.ts';
import { checkCheck } from '../../support/check-check.ts';
import { pollText, row } from '../../support/clean-swap.ts';

/** The lines of the switchover: who left, who took over, the command; then the one that says how ready the partner was. */
const switchover = [
  '09:20:01 RO1 A role standby',
  '09:20:01.1 RO1 B role active',
  '09:20:00 RO1 switchover command',
];

/** The same swap polled every 10 s, ready at a given clock, lost from 09:30 to 09:31, switched over at 09:20. */
function polled(ready: string, ...gaps: readonly (readonly [string, string])[]): string {
  return pollText(
    ['08:40:00', '09:40:00'],
    10,
    [
      [
        'RO1',
        'partner-ready',
        ['08:40:00', 'yes'],
        ['09:00:00', 'no'],
        [ready, 'yes'],
        ['09:30:00', 'no'],
        ['09:31:00', 'yes'],
      ],
      ['RO1-B', 'serial', ['08:40:00', 'T2-1'], ['09:00:00', ''], ['09:02:00', 'T4-2']],
      ['RO1-A', 'role', ['08:40:00', 'active'], ['09:20:00', 'standby']],
      ['RO1-B', 'role', ['08:40:00', 'standby'], ['09:20:00', 'active']],
    ],
    gaps,
  );
}
const taken = (clock: string): readonly string[] => [
  row(clock, 'RO1-A', 'role', 'standby'),
  row(clock, 'RO1-B', 'role', 'active'),
];

checkCheck(
  readyBeforeSwitchover,
  {
    // From 09:07:00 to 09:20:01.
    says: 'Before the switchover to half B the partner had been ready for 13 min 01 s.',
    lines: [...switchover, '09:07:00 RO1 partner ready'],
  },
  [
    {
      // Looks at 09:19:00 and 09:21:00: in between it may have been ready for a minute before 09:20:01, and lost with the switchover.
      name: 'not ready at the looks before and after it, two minutes apart',
      status: 'inconclusive',
      without: ['partner'],
      files: {
        'poll.csv': pollText(['08:41:00', '09:51:00'], 120, [
          ['RO1', 'partner-ready', ['08:41:00', 'yes'], ['09:01:00', 'no'], ['09:25:00', 'yes']],
        ]),
      },
      says: 'When last logged before the switchover to half B the partner was not ready; it may have become ready by then.',
      lines: [...switchover, row('09:01:00', 'RO1', 'partner-ready', 'no')],
    },
    {
      name: 'not ready at the switchover',
      status: 'fail',
      without: ['09:07:00'],
      says: 'The switchover to half B came while the partner was not ready.',
      lines: [...switchover, '09:00:00 RO1 partner not ready'],
    },
    {
      name: 'ready for only half a minute',
      status: 'fail',
      without: ['09:07:00'],
      plus: ['09:19:31  RO1  partner ready'],
      says: 'Before the switchover to half B the partner had been ready for 30 s. At least 1 min 00 s are needed.',
      lines: [...switchover, '09:19:31 RO1 partner ready'],
    },
    {
      name: 'ready for a minute',
      status: 'pass',
      without: ['09:07:00'],
      plus: ['09:19:01  RO1  partner ready'],
      says: 'Before the switchover to half B the partner had been ready for 1 min 00 s.',
      lines: [...switchover, '09:19:01 RO1 partner ready'],
    },
    {
      name: 'no switchover in the swap',
      status: 'pass',
      without: ['09:20'],
      says: 'None: no switchover was logged in this swap.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'readiness is never logged',
      status: 'not-observed',
      without: ['partner'],
      says: 'Whether the partner was ready before the switchover to half B is not known.',
      lines: switchover,
    },
    {
      name: 'readiness is first logged after the switchover',
      status: 'inconclusive',
      without: ['partner'],
      plus: ['09:30:00  RO1  partner ready'],
      says: 'Whether the partner was ready before the switchover to half B is not known.',
      lines: switchover,
    },
    {
      // Ready since a time in (09:18:50, 09:19:00], switched over in (09:19:50, 09:20:00]: 50 s to 70 s.
      name: 'polled every 10 s, ready for about a minute, lost and back later',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': polled('09:19:00') },
      says: 'Before the switchover to half B the partner had been ready for 50 s. At least 1 min 00 s are needed.',
      lines: [...taken('09:20:00'), row('09:19:00', 'RO1', 'partner-ready', 'yes')],
    },
    {
      // Ready since a time in (09:19:40, 09:19:50]: 20 s at most.
      name: 'polled every 10 s, first read as ready at the last reading before the switchover',
      status: 'fail',
      isAlone: true,
      files: { 'poll.csv': polled('09:19:50') },
      says: 'At least 1 min 00 s are needed.',
      lines: [...taken('09:20:00'), row('09:19:50', 'RO1', 'partner-ready', 'yes')],
    },
    {
      // Ready since 09:07:00, switched over after 09:19:50.
      name: 'not polled for some time before it was ready, and after the switchover',
      status: 'pass',
      isAlone: true,
      files: { 'poll.csv': polled('09:07:00', ['08:45:10', '08:50:50'], ['09:22:10', '09:26:50']) },
      says: 'Before the switchover to half B the partner had been ready for 12 min 50 s.',
      lines: [...taken('09:20:00'), row('09:07:00', 'RO1', 'partner-ready', 'yes')],
    },
    {
      name: 'not polled at the switchover',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': polled('09:07:00', ['09:15:10', '09:24:50']) },
      says: 'Readiness of the partner was not observed for 10 min 00 s about the switchover to half B.',
      lines: [
        ...taken('09:25:00'),
        ...['09:07:00', '09:15:00', '09:25:00'].map((clock) => row(clock, 'RO1', 'partner-ready', 'yes')),
      ],
    },
  ],
);
