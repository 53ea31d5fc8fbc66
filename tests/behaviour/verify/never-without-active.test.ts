import { neverWithoutActive } from '../../../src/verify/never-without-active.ts';
import { checkCheck } from '../../support/check-check.ts';
import { pollText, row } from '../../support/clean-swap.ts';

/** The lines of the switchover: who left, who took over, the command, and since when the partner was ready. */
const switchover = [
  '09:20:01 RO1 A role standby',
  '09:20:01.1 RO1 B role active',
  '09:20:00 RO1 switchover command',
  '09:07:00 RO1 partner ready',
];

/** The same swap polled every 10 s; half A leaves the active role at 09:20:00, half B takes it at a given clock. */
function polled(taken: string, ...gaps: readonly (readonly [string, string])[]): string {
  return pollText(
    ['08:40:00', '09:40:00'],
    10,
    [
      ['RO1', 'partner-ready', ['08:40:00', 'yes'], ['09:00:00', 'no'], ['09:07:00', 'yes']],
      ['RO1-B', 'serial', ['08:40:00', 'T2-1'], ['09:00:00', ''], ['09:02:00', 'T4-2']],
      ['RO1-A', 'role', ['08:40:00', 'active'], ['09:20:00', 'standby']],
      ['RO1-B', 'role', ['08:40:00', 'standby'], [taken, 'active']],
    ],
    gaps,
  );
}

checkCheck(
  neverWithoutActive,
  {
    says: 'Exactly one half was active throughout, except for at most 0.1 s at a switchover.',
    lines: [
      '09:20:01 RO1 A role standby',
      '09:20:01.1 RO1 B role active',
      '09:20:00 RO1 switchover command',
      '09:07:00 RO1 partner ready',
    ],
  },
  [
    {
      name: 'neither half active for two seconds',
      status: 'fail',
      without: ['09:20:01.1'],
      plus: ['09:20:03  RO1 B  role active'],
      says: 'Neither half was active for 2.0 s.',
      lines: ['09:20:01 RO1 A role standby', '09:20:03 RO1 B role active'],
    },
    {
      name: 'both halves active for two seconds',
      status: 'fail',
      without: ['09:20:01  RO1 A'],
      plus: ['09:20:03.1  RO1 A  role standby'],
      says: 'Both halves were active for 2.0 s.',
      lines: ['09:20:01.1 RO1 B role active', '09:20:03.1 RO1 A role standby'],
    },
    {
      name: 'neither half active for one second',
      status: 'pass',
      without: ['09:20:01.1'],
      plus: ['09:20:02  RO1 B  role active'],
      says: 'Exactly one half was active throughout, except for at most 1.0 s at a switchover.',
      lines: [
        '09:20:01 RO1 A role standby',
        '09:20:02 RO1 B role active',
        '09:20:00 RO1 switchover command',
        '09:07:00 RO1 partner ready',
      ],
    },
    {
      // From 09:20:01 to the last line, 09:45:00.
      name: 'a switchover is logged, half A says that it left, and half B never that it took over',
      status: 'fail',
      without: ['09:20:01.1'],
      plus: ['09:20:01  RO1    switchover'],
      says: 'Neither half was active for 24 min 59 s.',
      lines: ['09:20:01 RO1 A role standby'],
    },
    {
      name: 'the same, and the log ends there: the other half may still have taken over',
      status: 'inconclusive',
      without: ['09:20:01.1', '09:45'],
      plus: ['09:20:01  RO1    switchover'],
      says: 'Neither half was active at the end of the log, for less than 1 s so far.',
      lines: ['09:20:01 RO1 A role standby'],
    },
    {
      name: 'no switchover',
      status: 'pass',
      without: ['09:20'],
      says: 'Exactly one half was active throughout.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'no role is ever logged',
      status: 'not-observed',
      without: ['role'],
      says: 'The role of half A and half B was never logged.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'both halves active for three seconds in a switchover before the work',
      status: 'pass',
      plus: [
        '08:50:00  RO1 B  role active',
        '08:50:03  RO1 A  role standby',
        '08:52:00  RO1 A  role active',
        '08:52:00  RO1 B  role standby',
      ],
      says: 'Exactly one half was active throughout, except for at most 0.1 s at a switchover.',
      lines: switchover,
    },
    {
      // Settled at 09:07, so the swap ends at 09:37.
      name: 'both halves active for three seconds from the end of the swap on',
      status: 'pass',
      plus: ['09:37:00  RO1 A  role active', '09:37:03  RO1 B  role standby'],
      says: 'Exactly one half was active throughout, except for at most 0.1 s at a switchover.',
      lines: switchover,
    },
    {
      // Neither active from a time in (09:19:50, 09:20:00] to one in (09:20:10, 09:20:20]: 10 s to 30 s.
      name: 'polled every 10 s, neither half read as active twice',
      status: 'fail',
      isAlone: true,
      files: { 'poll.csv': polled('09:20:20') },
      says: 'Neither half was active for 10 s to 30 s.',
      lines: [row('09:20:00', 'RO1-A', 'role', 'standby'), row('09:20:20', 'RO1-B', 'role', 'active')],
    },
    {
      // Neither active from a time in (09:19:50, 09:20:00] to one in (09:20:00, 09:20:10]: 0 s to 20 s.
      name: 'polled every 10 s, neither half read as active once',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': polled('09:20:10') },
      says: 'Neither half was active at least briefly, for at most 20 s.',
      lines: [row('09:20:00', 'RO1-A', 'role', 'standby'), row('09:20:10', 'RO1-B', 'role', 'active')],
    },
    {
      // Both in (09:19:50, 09:20:00]: at most 10 s without an active half.
      name: 'polled every 10 s, both roles changed from one reading to the next',
      status: 'pass',
      isAlone: true,
      files: { 'poll.csv': polled('09:20:00') },
      says: 'Exactly one half was active throughout, except for at most 10 s at a switchover.',
      lines: [
        row('09:20:00', 'RO1-A', 'role', 'standby'),
        row('09:20:00', 'RO1-B', 'role', 'active'),
        row('09:07:00', 'RO1', 'partner-ready', 'yes'),
      ],
    },
    {
      name: 'not polled for ten minutes of the swap',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': polled('09:20:00', ['09:25:10', '09:34:50']) },
      says: 'The roles were not observed for 10 min 00 s.',
      lines: [row('09:25:00', 'RO1-A', 'role', 'standby'), row('09:35:00', 'RO1-A', 'role', 'standby')],
    },
    {
      name: 'the role of one half is never logged',
      status: 'not-observed',
      without: ['RO1 B  role', 'A  role standby'],
      says: 'The role of half B was never logged.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
  ],
);
