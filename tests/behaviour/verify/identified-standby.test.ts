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

/** The new module was the ready partner five minutes after its insertion. */
const ready = ['09:05:00 RO1 B reflash end', '09:07:00 RO1 partner ready'];

checkCheck(
  identifiedStandby,
  {
    says: 'Half B took the standby role at its insertion.',
    lines: ['09:02:00 RO1 B module inserted', '09:02:00 RO1 B role standby'],
  },
  [
    {
      name: 'took the role sixteen minutes after the insertion',
      status: 'fail',
      without: ['09:02:00  RO1 B  role', '09:20:01'],
      plus: ['09:18:00  RO1 B  role standby'],
      says: 'Half B took the standby role 16 min 00 s after its insertion.',
      lines: ['09:02:00 RO1 B module inserted', '09:18:00 RO1 B role standby'],
    },
    {
      name: 'took the role fifteen minutes after the insertion',
      status: 'pass',
      without: ['09:02:00  RO1 B  role', '09:20:01'],
      plus: ['09:17:00  RO1 B  role standby'],
      says: 'Half B took the standby role 15 min 00 s after its insertion.',
      lines: ['09:02:00 RO1 B module inserted', '09:17:00 RO1 B role standby'],
    },
    {
      name: 'no role is ever logged',
      status: 'not-observed',
      without: ['role'],
      says: 'No line ever states the role of half B.',
      lines: ['09:02:00 RO1 B module inserted'],
    },
    {
      name: 'took the role one second after the insertion',
      status: 'pass',
      without: ['09:02:00  RO1 B  role'],
      plus: ['09:02:01  RO1 B  role standby'],
      says: 'Half B took the standby role 1.0 s after its insertion.',
      lines: ['09:02:00 RO1 B module inserted', '09:02:01 RO1 B role standby'],
    },
    {
      name: 'had no role at first',
      status: 'pass',
      without: ['09:00:00  RO1 B  role', '09:02:00  RO1 B  role', '09:20'],
      plus: ['09:02:10  RO1 B  role none', '09:03:00  RO1 B  role standby'],
      says: 'Half B took the standby role 1 min 00 s after its insertion.',
      lines: ['09:02:00 RO1 B module inserted', '09:03:00 RO1 B role standby'],
    },
    {
      name: 'took the role about fifteen minutes after the insertion, by a log of whole seconds',
      status: 'inconclusive',
      isWhole: true,
      without: ['09:02:00  RO1 B  role', '09:20'],
      plus: ['09:17:00  RO1 B  role standby'],
      says: 'Half B took the standby role 14 min 59 s to 15 min 01 s after its insertion.',
      lines: ['09:02:00 RO1 B module inserted', '09:17:00 RO1 B role standby'],
    },
    {
      name: 'took the active role',
      status: 'fail',
      without: ['09:02:00  RO1 B  role', '09:20'],
      plus: ['09:04:00  RO1 A  role standby', '09:04:00  RO1 B  role active'],
      says: 'Half B took the role active after its insertion, not standby.',
      lines: ['09:02:00 RO1 B module inserted', '09:04:00 RO1 B role active'],
    },
    {
      // Ready at 09:07, so the swap ends at 09:37.
      name: 'its role is stated only after the swap, but it became the ready partner in time',
      status: 'pass',
      without: ['09:02:00  RO1 B  role', '09:20'],
      plus: ['09:40:00  RO1 B  role standby'],
      says: 'No line states the role of half B after its insertion; it was the ready partner 5 min 00 s later.',
      lines: ['09:02:00 RO1 B module inserted', ...ready],
    },
    {
      name: 'its role is not stated again; it was the ready partner after fifteen minutes',
      status: 'pass',
      without: ['09:02:00  RO1 B  role', '09:07:00', '09:20'],
      plus: ['09:17:00  RO1  partner ready'],
      says: 'it was the ready partner 15 min 00 s later.',
      lines: ['09:02:00 RO1 B module inserted', '09:05:00 RO1 B reflash end', '09:17:00 RO1 partner ready'],
    },
    {
      name: 'its role is not stated again; it was the ready partner only after sixteen minutes',
      status: 'inconclusive',
      without: ['09:02:00  RO1 B  role', '09:07:00', '09:20'],
      plus: ['09:18:00  RO1  partner ready'],
      says: 'it was the ready partner 16 min 00 s later.',
      lines: ['09:02:00 RO1 B module inserted', '09:05:00 RO1 B reflash end', '09:18:00 RO1 partner ready'],
    },
    {
      name: 'the first word of its role is that it took over, as the ready partner',
      status: 'pass',
      without: ['09:02:00  RO1 B  role'],
      says: 'it was the ready partner 5 min 00 s later.',
      lines: ['09:02:00 RO1 B module inserted', ...ready],
    },
    {
      name: 'its role is not stated again; a restart before its removal had made the old module the ready partner',
      status: 'pass',
      without: ['09:00:00  RO1 B  role', '09:02:00  RO1 B  role'],
      plus: [
        '08:42:00  RO1 B  module restart',
        '08:42:00  RO1    partner not ready',
        '08:43:00  RO1    partner ready',
      ],
      says: 'it was the ready partner 5 min 00 s later.',
      lines: ['09:02:00 RO1 B module inserted', ...ready],
    },
    {
      name: 'neither a role nor a ready partner in fifteen minutes, when the log ends',
      status: 'inconclusive',
      without: ['09:02:00  RO1 B  role', '09:07', '09:20', '09:45'],
      plus: ['09:17:00  RO1  configuration current'],
      says: 'Half B took no role in the 15 min 00 s it was watched after its insertion.',
      lines: ['09:02:00 RO1 B module inserted'],
    },
    {
      name: 'neither a role nor a ready partner in fifteen minutes and a second, when the log ends',
      status: 'fail',
      without: ['09:02:00  RO1 B  role', '09:07', '09:20', '09:45'],
      plus: ['09:17:01  RO1  configuration current'],
      says: 'Half B took no role in the 15 min 01 s it was watched after its insertion.',
      lines: ['09:02:00 RO1 B module inserted'],
    },
    {
      name: 'no role is stated but none',
      status: 'not-observed',
      without: ['role standby', 'role active'],
      says: 'No line ever states the role of half B.',
      lines: ['09:02:00 RO1 B module inserted'],
    },
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
      name: 'nothing was put in, and the log ends after fifteen minutes',
      status: 'inconclusive',
      without: ['09:0', '09:20', '09:45'],
      plus: ['09:00:00  RO1 B  module removed', '09:15:00  RO1  configuration current'],
      says: 'No module was put into half B in the 15 min 00 s it was watched.',
      lines: ['09:00:00 RO1 B module removed'],
    },
    {
      name: 'nothing was put in, and the log ends a second later',
      status: 'fail',
      without: ['09:0', '09:20', '09:45'],
      plus: ['09:00:00  RO1 B  module removed', '09:15:01  RO1  configuration current'],
      says: 'No module was put into half B in the 15 min 01 s it was watched.',
      lines: ['09:00:00 RO1 B module removed'],
    },
  ],
);
