import { identifiedStandby } from '../../../src/verify/identified-standby.ts';
import { checkCheck } from '../../support/check-check.ts';
import { pollText, row } from '../../support/clean-swap.ts';

/** Half B polled every 10 s: gone at 09:00:00, a new serial at 09:02:00, standby from a given clock on. */
function polled(standby: string, ...gaps: readonly (readonly [string, string])[]): string {
  return pollText(
    ['08:40:00', '09:40:00'],
    10,
    [
      ['RO1-B', 'role', ['08:40:00', 'standby'], ['09:00:00', 'none'], [standby, 'standby']],
      ['RO1-B', 'serial', ['08:40:00', 'T2-1'], ['09:00:00', ''], ['09:02:00', 'T4-2']],
    ],
    gaps,
  );
}

/** Both halves polled every 10 s: half B as above, active when it is first read at 09:04:00; half A not active from a clock on. */
function takenOver(left: string): string {
  return pollText(['08:40:00', '09:40:00'], 10, [
    ['RO1-A', 'role', ['08:40:00', 'active'], [left, 'none']],
    ['RO1-B', 'role', ['08:40:00', 'standby'], ['09:00:00', 'none'], ['09:04:00', 'active']],
    ['RO1-B', 'serial', ['08:40:00', 'T2-1'], ['09:00:00', ''], ['09:02:00', 'T4-2']],
  ]);
}

checkCheck(
  identifiedStandby,
  {
    says: 'Half B took the standby role at its insertion.',
    lines: ['09:02:00 RO1 B module inserted', '09:02:00 RO1 B role standby'],
  },
  [
    {
      // Inserted in (08:59:50, 09:02:00], standby in (09:11:50, 09:12:00]: 9 min 50 s to 12 min 10 s.
      name: 'polled, standby ten minutes after its serial was read',
      status: 'pass',
      isAlone: true,
      files: { 'poll.csv': polled('09:12:00') },
      says: 'Half B took the standby role 9 min 50 s to 12 min 10 s after its insertion.',
      lines: [row('09:02:00', 'RO1-B', 'serial', 'T4-2'), row('09:12:00', 'RO1-B', 'role', 'standby')],
    },
    {
      name: 'polled, standby fourteen minutes after its serial was read: from its insertion on it may be more',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': polled('09:16:00') },
      says: 'Half B took the standby role 13 min 50 s to 16 min 10 s after its insertion.',
      lines: [row('09:02:00', 'RO1-B', 'serial', 'T4-2'), row('09:16:00', 'RO1-B', 'role', 'standby')],
    },
    {
      name: 'not polled until it was standby: it may have been so at once',
      status: 'pass',
      isAlone: true,
      files: { 'poll.csv': polled('09:12:00', ['09:02:10', '09:11:50']) },
      says: 'Half B took the standby role at most 12 min 10 s after its insertion.',
      lines: [row('09:02:00', 'RO1-B', 'serial', 'T4-2'), row('09:12:00', 'RO1-B', 'role', 'standby')],
    },
    {
      // Standby in (09:02:00, 09:20:00]: 0 s to 20 min 10 s.
      name: 'not polled until it was standby, eighteen minutes after its serial was read',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': polled('09:20:00', ['09:02:10', '09:19:50']) },
      says: 'Half B took the standby role at most 20 min 10 s after its insertion.',
      lines: [row('09:02:00', 'RO1-B', 'serial', 'T4-2'), row('09:20:00', 'RO1-B', 'role', 'standby')],
    },
    {
      // Half A left the active role, and half B took it, in (09:03:50, 09:04:00]: half B may have been standby for a moment.
      name: 'polled, the first reading of its role is that it took over from the other half',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': takenOver('09:04:00') },
      says: 'Half B took the role active after its insertion, not standby.',
      lines: [row('09:02:00', 'RO1-B', 'serial', 'T4-2'), row('09:04:00', 'RO1-B', 'role', 'active')],
    },
    {
      // Half A left the active role in (09:03:40, 09:03:50]: none was active when half B was read without a role at 09:03:50.
      name: 'polled, active though the other half was not any more',
      status: 'fail',
      isAlone: true,
      files: { 'poll.csv': takenOver('09:03:50') },
      says: 'Half B took the role active after its insertion, not standby.',
      lines: [row('09:02:00', 'RO1-B', 'serial', 'T4-2'), row('09:04:00', 'RO1-B', 'role', 'active')],
    },
  ],
);
