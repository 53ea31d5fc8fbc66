import { lightSteady } from '../../../src/verify/light-steady.ts';
import { checkCheck } from '../../support/check-check.ts';
import { pollText, row } from '../../support/clean-swap.ts';

/** Half B polled every 10 s: gone at 09:00:00, a new serial at 09:02:00, active from 09:20:00 on; its light as given. */
function polled(...light: readonly (readonly [string, string])[]): string {
  return pollText(['08:40:00', '09:40:00'], 10, [
    ['RO1-B', 'light', ...light],
    ['RO1-B', 'serial', ['08:40:00', 'T2-1'], ['09:00:00', ''], ['09:02:00', 'T4-2']],
    [
      'RO1-B',
      'role',
      ['08:40:00', 'standby'],
      ['09:00:00', 'none'],
      ['09:02:00', 'standby'],
      ['09:20:00', 'active'],
    ],
    ['RO1-A', 'role', ['08:40:00', 'active'], ['09:20:00', 'standby']],
  ]);
}
const before = [
  ['08:40:00', 'steady'],
  ['09:00:00', 'off'],
] as const;
const inserted = row('09:02:00', 'RO1-B', 'serial', 'T4-2');

checkCheck(
  lightSteady,
  {
    says: 'The light of half B was steady after 4 min 00 s; the limit is 5 min 00 s.',
    lines: ['09:05:00 RO1 B reflash end', '09:09:00 RO1 B light steady'],
  },
  [
    {
      // Inserted at 09:02:00 with the old firmware: its reflash is awaited, and the light after that.
      name: 'flashing for six minutes while the reflash is still awaited',
      status: 'inconclusive',
      without: ['09:03', '09:05', '09:07', '09:09', '09:20', '09:45'],
      plus: ['09:08:00  RO1 A  link a up'],
      says: 'The swap is still open. So far: the light of half B was not steady within the 6 min 00 s observed; the limit is 5 min 00 s.',
      lines: ['09:02:00 RO1 B module inserted', '09:02:00 RO1 B light flashing', '09:08:00 RO1 A link a up'],
    },
    {
      name: 'steady one second past five minutes',
      status: 'fail',
      without: ['09:09:00'],
      plus: ['09:10:01  RO1 B  light steady'],
      says: 'The light of half B was steady after 5 min 01 s; the limit is 5 min 00 s.',
      lines: ['09:05:00 RO1 B reflash end', '09:10:01 RO1 B light steady'],
    },
    {
      name: 'steady at five minutes',
      status: 'pass',
      without: ['09:09:00'],
      plus: ['09:10:00  RO1 B  light steady'],
      says: 'The light of half B was steady after 5 min 00 s; the limit is 5 min 00 s.',
      lines: ['09:05:00 RO1 B reflash end', '09:10:00 RO1 B light steady'],
    },
    {
      name: 'the log ends after four minutes',
      status: 'inconclusive',
      without: ['09:09:00', '09:20', '09:45'],
      plus: ['09:09:00  RO1  configuration current'],
      says: 'The light of half B was not steady within the 4 min 00 s observed; the limit is 5 min 00 s.',
      lines: ['09:05:00 RO1 B reflash end', '09:09:00 RO1 configuration current'],
    },
    {
      name: 'no light is ever logged',
      status: 'not-observed',
      without: ['light'],
      says: 'The light of half B after its start was never logged.',
      lines: ['09:05:00 RO1 B reflash end'],
    },
    {
      name: 'steady for half a minute when the log ends',
      status: 'inconclusive',
      without: ['09:20', '09:45'],
      plus: ['09:09:30  RO1  configuration current'],
      says: 'The light of half B was steady after 4 min 30 s, but observation ended too early to tell whether it stayed steady; the limit is 5 min 00 s.',
      lines: [
        '09:05:00 RO1 B reflash end',
        '09:09:00 RO1 B light steady',
        '09:09:30 RO1 configuration current',
      ],
    },
    {
      // Inserted in (08:59:50, 09:02:00], steady in (09:04:20, 09:04:30]: 2 min 20 s to 4 min 40 s.
      name: 'polled every 10 s, steady within the limit whenever it was inserted',
      status: 'pass',
      isAlone: true,
      files: { 'poll.csv': polled(...before, ['09:02:00', 'flashing'], ['09:04:30', 'steady']) },
      says: 'The light of half B was steady after 2 min 20 s to 4 min 40 s; the limit is 5 min 00 s.',
      lines: [inserted, row('09:04:30', 'RO1-B', 'light', 'steady')],
    },
    {
      // Steady in (09:06:50, 09:07:00]: 4 min 50 s to 7 min 10 s.
      name: 'polled every 10 s, steady five minutes after its serial was read',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': polled(...before, ['09:02:00', 'flashing'], ['09:07:00', 'steady']) },
      says: 'The light of half B was steady after 4 min 50 s to 7 min 10 s; the limit is 5 min 00 s.',
      lines: [inserted, row('09:07:00', 'RO1-B', 'light', 'steady')],
    },
    {
      // Steady in (09:07:50, 09:08:00]: 5 min 50 s at least.
      name: 'polled every 10 s, steady six minutes after its serial was read',
      status: 'fail',
      isAlone: true,
      files: { 'poll.csv': polled(...before, ['09:02:00', 'flashing'], ['09:08:00', 'steady']) },
      says: 'The light of half B was steady after 5 min 50 s to 8 min 10 s; the limit is 5 min 00 s.',
      lines: [inserted, row('09:08:00', 'RO1-B', 'light', 'steady')],
    },
    {
      name: 'polled, never other than steady, and off as its half became active',
      status: 'not-observed',
      isAlone: true,
      files: { 'poll.csv': polled(['08:40:00', 'steady'], ['09:20:00', 'off']) },
      says: 'Every reading of the light of half B was steady, so how long it took is not known.',
      lines: [inserted],
    },
  ],
);
