import { notFlapping } from '../../../src/verify/not-flapping.ts';
import { checkCheck } from '../../support/check-check.ts';
import { pollText, row } from '../../support/clean-swap.ts';

// A module is often replaced because it flaps: what it lost is none of the new one's.
const threeLosses = [
  '08:45:00  RO1    partner not ready',
  '08:46:00  RO1    partner ready',
  '08:48:00  RO1    partner not ready',
  '08:49:00  RO1    partner ready',
  '08:51:00  RO1    partner not ready',
  '08:52:00  RO1    partner ready',
];

const eightLosses = [43, 45, 47, 49, 51, 53, 55, 57];

checkCheck(
  notFlapping,
  {
    says: 'The partner was not lost again.',
    lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
  },
  [
    {
      // After the third loss their penalty is 2.63, and below the re-use value 27 min 9 s later, at 09:03:09; fitted in (08:59, 09:08].
      name: 'three losses before the swap, whose penalty ends between the readings that bound the insertion',
      status: 'pass',
      isAlone: true,
      files: {
        'poll.csv': pollText(['08:20:00', '09:50:00'], 60, [
          ['RO1-A', 'role', ['08:20:00', 'active']],
          ['RO1-B', 'role', ['08:20:00', 'standby'], ['09:00:00', 'none'], ['09:08:00', 'standby']],
          ['RO1-B', 'serial', ['08:20:00', 'T2-1'], ['09:00:00', ''], ['09:08:00', 'T4-2']],
          [
            'RO1',
            'partner-ready',
            ['08:20:00', 'yes'],
            ['08:30:00', 'no'],
            ['08:31:00', 'yes'],
            ['08:33:00', 'no'],
            ['08:34:00', 'yes'],
            ['08:36:00', 'no'],
            ['08:37:00', 'yes'],
            ['09:00:00', 'no'],
            ['09:12:00', 'yes'],
          ],
        ]),
      },
      says: 'The partner was not lost again.',
      lines: [row('08:20:00', 'RO1-A', 'role', 'active'), row('09:50:00', 'RO1-A', 'role', 'active')],
    },
    {
      // They are why the module is replaced; their penalty of 2.63 is below the re-use value only 27 min 9 s after the third, at 09:18:09.
      name: 'three losses just before the removal, none after the insertion',
      status: 'pass',
      plus: threeLosses,
      says: 'The partner was not lost again.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      // 18 min after the third loss 1.14 of 2.63 are left: the trouble goes on with the new module.
      name: 'three losses just before the removal, and one more while their penalty lasts',
      status: 'fail',
      plus: [...threeLosses, '09:09:10  RO1  partner not ready', '09:09:20  RO1  partner ready'],
      says: 'The standby was flapping: 4 losses in a row.',
      lines: [
        '08:45:00 RO1 partner not ready',
        '08:48:00 RO1 partner not ready',
        '08:51:00 RO1 partner not ready',
        '09:09:10 RO1 partner not ready',
      ],
    },
    {
      // Two minutes apart with a half-life of fifteen they weigh 5.92 at the last, and 0.95 of that is left at 09:37:30, more than the re-use
      // value. The swap ends at 09:37:00; the last loss lies in (09:36:30, 09:37:30].
      name: 'eight losses just before the removal, and one between two readings of which one is after the end of the swap',
      status: 'inconclusive',
      files: {
        'poll.csv': pollText(['08:41:30', '09:50:30'], 60, [
          [
            'RO1',
            'partner-ready',
            ['08:41:30', 'yes'],
            ...eightLosses.flatMap((minute): [string, string][] => [
              [`08:${minute}:30`, 'no'],
              [`08:${minute + 1}:30`, 'yes'],
            ]),
            ['09:00:30', 'no'],
            ['09:07:30', 'yes'],
            ['09:37:30', 'no'],
            ['09:38:30', 'yes'],
          ],
        ]),
      },
      says: 'The standby was flapping, 9 losses in a row; the logs do not show whether any of them lies between the first insertion and the end of the swap.',
      lines: [...eightLosses.map((minute) => `08:${minute}:30`), '09:37:30'].map((clock) =>
        row(clock, 'RO1', 'partner-ready', 'no'),
      ),
    },
    {
      name: 'three losses before the removal, after which no module was fitted yet',
      status: 'pass',
      without: ['09:02:', '09:03:', '09:05:', '09:07:', '09:09:', '09:20:', '09:45:'],
      plus: [...threeLosses, '09:10:00  RO1    configuration current'],
      says: 'The partner was not lost again.',
      lines: ['08:40:00 RO1 configuration current', '09:10:00 RO1 configuration current'],
    },
  ],
);
