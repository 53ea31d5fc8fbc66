import { removedStandby } from '../../../src/verify/removed-standby.ts';
import { checkCheck } from '../../support/check-check.ts';
import { pollText, row } from '../../support/clean-swap.ts';

/** Half B, active when the log begins, is last read at 08:59:50, and nothing is reported there at 09:00:00. */
function polled(...roles: readonly (readonly [string, string])[]): string {
  return pollText(['08:40:00', '09:40:00'], 10, [
    ['RO1-B', 'role', ['08:40:00', 'active'], ...roles, ['09:00:00', 'none'], ['09:02:00', 'standby']],
    ['RO1-A', 'role', ['08:40:00', 'standby'], ['09:00:00', 'active']],
    ['RO1-B', 'serial', ['08:40:00', 'T2-1'], ['09:00:00', ''], ['09:02:00', 'T4-2']],
  ]);
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
      name: 'polled, last read as active',
      status: 'fail',
      isAlone: true,
      files: { 'poll.csv': polled() },
      says: 'Half B was active when it was removed.',
      lines: [row('08:40:00', 'RO1-B', 'role', 'active'), gone],
    },
    {
      name: 'polled, standby at the last reading before the removal',
      status: 'pass',
      isAlone: true,
      files: { 'poll.csv': polled(['08:59:50', 'standby']) },
      says: 'Half B was standby when it was removed.',
      lines: [row('08:59:50', 'RO1-B', 'role', 'standby'), gone],
    },
    // The removal lies in (08:59:50, 09:00:00]: a command counts from 08:59:20 on.
    ...[
      {
        name: '30 s before the first instant of the removal',
        clock: '08:59:20',
        status: 'inconclusive' as const,
      },
      { name: '31 s before it', clock: '08:59:19', status: 'fail' as const },
      { name: 'at the last instant of the removal', clock: '09:00:00', status: 'inconclusive' as const },
      { name: 'a second after it', clock: '09:00:01', status: 'fail' as const },
    ].map(({ name, clock, status }) => ({
      name: `polled, last read as active, a switchover commanded ${name}`,
      status,
      isAlone: true,
      files: { 'poll.csv': polled(), 'commands.log': `2026-03-14T${clock}.000Z RO1 switchover command\n` },
      says:
        status === 'fail'
          ? 'Half B was active when it was removed.'
          : 'The logs do not settle the role of half B at its removal.',
      lines: [row('08:40:00', 'RO1-B', 'role', 'active'), gone],
    })),
  ],
);
