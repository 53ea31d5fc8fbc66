import { removedStandby } from '../../../src/verify/removed-standby.ts';
import { checkCheck } from '../../support/check-check.ts';
import { type Polled, pollText, row } from '../../support/clean-swap.ts';

/** Half B, active when the log begins, is last read at 08:59:50, and nothing is reported there at 09:00:00; half A takes over. */
function polled(
  takes: string,
  roles: Polled[2][] = [],
  ...gaps: readonly (readonly [string, string])[]
): string {
  return pollText(
    ['08:40:00', '09:40:00'],
    10,
    [
      ['RO1-B', 'role', ['08:40:00', 'active'], ...roles, ['09:00:00', 'none'], ['09:02:00', 'standby']],
      ['RO1-A', 'role', ['08:40:00', 'standby'], [takes, 'active']],
      ['RO1-B', 'serial', ['08:40:00', 'T2-1'], ['09:00:00', ''], ['09:02:00', 'T4-2']],
    ],
    gaps,
  );
}
const gone = row('09:00:00', 'RO1-B', 'serial', '');

checkCheck(
  removedStandby,
  {
    says: 'Half B was standby when it was removed.',
    lines: ['08:40:00 RO1 B role standby', '09:00:00 RO1 B module removed'],
  },
  [
    {
      name: 'the active half was pulled',
      status: 'fail',
      without: ['08:40:00  RO1 A  role', '08:40:00  RO1 B  role'],
      plus: ['08:40:00  RO1 A  role standby', '08:40:00  RO1 B  role active'],
      says: 'Half B was active when it was removed.',
      lines: ['08:40:00 RO1 B role active', '09:00:00 RO1 B module removed'],
    },
    {
      // The poll ends at 08:59:50; the note has half B out between 09:00 and 09:01, after a switchover that nobody read.
      name: 'the active half was pulled, by a note of after the end of the poll',
      status: 'inconclusive',
      isAlone: true,
      files: {
        'poll.csv': pollText(['08:40:00', '08:59:50'], 10, [
          ['RO1-A', 'role', ['08:40:00', 'standby']],
          ['RO1-B', 'role', ['08:40:00', 'active']],
          ['RO1-A', 'serial', ['08:40:00', 'T2-9'], ['08:45:00', ''], ['08:50:00', 'T4-9']],
        ]),
        'notes.txt': '2026-03-14\nRO1\n09:00 switched over\n09:00 pulled module from slot B\n',
      },
      says: 'The role of half B just before its removal was not observed.',
      lines: [row('08:40:00', 'RO1-B', 'role', 'active'), '09:00 pulled module from slot B'],
    },
    {
      name: 'no role is ever logged',
      status: 'not-observed',
      without: ['role'],
      says: 'The role of half B at its removal was never logged.',
      lines: ['09:00:00 RO1 B module removed'],
    },
    {
      name: 'the active half was pulled although a switchover had been commanded',
      status: 'fail',
      without: ['08:40:00  RO1 A  role', '08:40:00  RO1 B  role'],
      plus: [
        '08:40:00  RO1 A  role standby',
        '08:40:00  RO1 B  role active',
        '08:59:50  RO1  switchover command',
      ],
      says: 'Half B was active when it was removed.',
      lines: ['08:40:00 RO1 B role active', '09:00:00 RO1 B module removed'],
    },
    {
      // The removal lies in (08:59:50, 09:00:00], half A took over in (09:00:00, 09:00:10].
      name: 'polled, last read as active, and the other half took over after the removal',
      status: 'fail',
      isAlone: true,
      files: { 'poll.csv': polled('09:00:10') },
      says: 'Half B was active when it was removed.',
      lines: [row('08:40:00', 'RO1-B', 'role', 'active'), gone],
    },
    {
      // Both lie in (08:59:50, 09:00:00]: the role may have been passed on first.
      name: 'polled, last read as active, and the other half took over at the next reading',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': polled('09:00:00') },
      says: 'The logs do not show the role of half B at its removal.',
      lines: [row('08:40:00', 'RO1-B', 'role', 'active'), gone],
    },
    {
      // Both are read as active at 08:59:50: half B may have given up the role just after, and been removed as the standby.
      name: 'polled, last read as active, and the other half was active already',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': polled('08:59:50') },
      says: 'The logs do not show the role of half B at its removal.',
      lines: [row('08:40:00', 'RO1-B', 'role', 'active'), gone],
    },
    {
      name: 'polled, standby at the last reading before the removal',
      status: 'pass',
      isAlone: true,
      files: { 'poll.csv': polled('08:59:50', [['08:59:50', 'standby']]) },
      says: 'Half B was standby when it was removed.',
      lines: [row('08:59:50', 'RO1-B', 'role', 'standby'), gone],
    },
    {
      name: 'not polled for ten minutes up to the removal, standby before',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': polled('08:45:00', [['08:45:00', 'standby']], ['08:50:10', '08:59:50']) },
      says: 'The role of half B just before its removal was not observed.',
      lines: [
        row('08:45:00', 'RO1-B', 'role', 'standby'),
        gone,
        row('08:50:00', 'RO1-B', 'serial', 'T2-1'),
        row('09:00:00', 'RO1-B', 'role', 'none'),
      ],
    },
    {
      name: 'the active half was out for a minute during the work, and its own module came back',
      status: 'fail',
      plus: ['09:00:30 RO1 A module removed', '09:01:30 RO1 A module inserted'],
      says: 'Half A was active when it was removed.',
      lines: ['08:40:00 RO1 A role active', '09:00:30 RO1 A module removed'],
    },
    {
      name: 'the role of the half is never logged, but the other one was active',
      status: 'pass',
      without: ['B  role'],
      says: 'Half B was standby when it was removed (concluded from the role of the other half).',
      lines: ['08:40:00 RO1 A role active', '09:00:00 RO1 B module removed'],
    },
    {
      name: 'the role of the half is never logged, but the other one was standby',
      status: 'fail',
      without: ['B  role', 'A  role'],
      plus: ['08:40:00  RO1 A  role standby'],
      says: 'Half B was active when it was removed (concluded from the role of the other half).',
      lines: ['08:40:00 RO1 A role standby', '09:00:00 RO1 B module removed'],
    },
  ],
);
