import { baselineRedundant } from '../../../src/verify/baseline-redundant.ts';
import { checkCheck } from '../../support/check-check.ts';
import { type Polled, pollText, row } from '../../support/clean-swap.ts';

const hour = ['08:40:00', '09:40:00'] as const;
const readyRow = ['RO1', 'partner-ready'] as const;
/** Out from 09:00 to 09:02. */
const serial: Polled = ['RO1-B', 'serial', ['08:40:00', 'T2-1'], ['09:00:00', ''], ['09:02:00', 'T4-2']];
/** As half B and the readiness of the partner are read from 08:30 on, and what else became of it before the work. */
const serialB: Polled = ['RO1-B', 'serial', ['08:30:00', 'T2-1'], ['09:00:00', ''], ['09:02:00', 'T4-2']];
const early = (...before: readonly (readonly [string, string])[]): Polled => [
  ...readyRow,
  ['08:30:00', 'yes'],
  ...before,
  ['09:00:00', 'no'],
  ['09:07:00', 'yes'],
];
/** Lost at a clock, and not ready again. */
const lost = (clock: string): Polled => [...readyRow, ['08:40:00', 'yes'], [clock, 'no']];
/** Half A, of which no serial is read from a clock on. */
const serialA = (clock: string): Polled => ['RO1-A', 'serial', ['08:40:00', 'T4-1'], [clock, '']];

checkCheck(
  baselineRedundant,
  {
    says: 'The partner was ready without a break in the 15 minutes before the first removal.',
    lines: ['08:40:00 RO1 partner ready', '09:00:00 RO1 partner not ready'],
  },
  [
    {
      // Half B was removed in (08:52:50, 09:00:00]: the fifteen minutes begin in (08:37:50, 08:45:00], and reach at the latest over
      // all of the 7 min 10 s in which nothing was read.
      name: 'not polled for the seven minutes in which the removal came',
      status: 'inconclusive',
      isAlone: true,
      files: {
        'poll.csv': pollText(['08:30:00', '09:40:00'], 10, [early(), serialB], [['08:53:00', '08:59:50']]),
      },
      says: 'Readiness of the partner was not observed for 7 min 10 s of the 15 minutes before the first removal.',
      lines: [row('08:52:50', ...readyRow, 'yes'), row('09:00:00', ...readyRow, 'no')],
    },
    {
      // Every 60 s but at 08:58 and 08:59, which is no gap: removed in (08:57, 09:00]. Lost in (08:42, 08:43] and back by 08:44: in
      // the fifteen minutes if they begin at 08:42, and before them if they begin at 08:45.
      name: 'polled every minute, lost and back within the bounds of the begin of the fifteen minutes',
      status: 'inconclusive',
      isAlone: true,
      files: {
        'poll.csv': pollText(
          ['08:30:00', '09:40:00'],
          60,
          [early(['08:43:00', 'no'], ['08:44:00', 'yes']), serialB],
          [['08:58:00', '08:59:00']],
        ),
      },
      says: 'The partner was lost within the 15 minutes before the first removal or outside them: the time of the removal is not known closely enough to tell.',
      lines: [row('08:43:00', ...readyRow, 'no')],
    },
    {
      // Every 120 s from 08:30:00 on: removed in (08:58, 09:00], so that the fifteen minutes begin in (08:43, 08:45]. Lost in
      // (08:42, 08:44], back in (08:44, 08:46]: in them or before.
      name: 'polled every 2 min, lost about when the fifteen minutes begin',
      status: 'inconclusive',
      isAlone: true,
      files: {
        'poll.csv': pollText(['08:30:00', '09:40:00'], 120, [
          early(['08:44:00', 'no'], ['08:46:00', 'yes']),
          serialB,
        ]),
      },
      says: 'The partner was lost',
      lines: [row('08:44:00', ...readyRow, 'no')],
    },
    {
      // Of half A no serial is read from 08:55 on, and the partner is lost: 5 min before half B is removed, and no loss in the
      // 15 min before 08:54:50. Half A may have been taken out, or have started anew.
      name: 'lost as the other half stopped reporting, which may be the first removal',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': pollText(hour, 10, [lost('08:55:00'), serial, serialA('08:55:00')]) },
      says: 'The logs do not show whether the first removal was that of half A, which stopped reporting before that of half B and was not seen again.',
      lines: [row('08:55:00', 'RO1-A', 'serial', '')],
    },
    {
      name: 'lost before the other half stopped reporting too, whichever was removed first',
      status: 'fail',
      isAlone: true,
      files: { 'poll.csv': pollText(hour, 10, [lost('08:50:00'), serial, serialA('08:55:00')]) },
      says: 'The partner was lost in the 15 minutes before the first removal.',
      lines: [row('08:50:00', ...readyRow, 'no')],
    },
    {
      name: 'lost as the other half started anew, which reports again as it was',
      status: 'fail',
      isAlone: true,
      files: {
        'poll.csv': pollText(hour, 10, [
          lost('08:55:00'),
          serial,
          [...serialA('08:55:00'), ['09:10:00', 'T4-1']],
        ]),
      },
      says: 'The partner was lost in the 15 minutes before the first removal.',
      lines: [row('08:55:00', ...readyRow, 'no')],
    },
  ],
);
