import { soaked } from '../../../src/verify/soaked.ts';
import { checkCheck } from '../../support/check-check.ts';
import { type Polled, pollText, row } from '../../support/clean-swap.ts';

const log = ['08:40:00', '09:45:00'] as const;
const readyRow = ['RO1', 'partner-ready'] as const;
/** Ready again at 09:07, and lost for good at a later clock. */
const ready = (lost: string): Polled => [
  ...readyRow,
  ['08:40:00', 'yes'],
  ['09:00:00', 'no'],
  ['09:07:00', 'yes'],
  [lost, 'no'],
];
/** Ready again at 09:07, lost at a clock, and ready for good at a later one. */
const twice = (lost: string, back: string): Polled => [...ready(lost), [back, 'yes']];
const serial: Polled = ['RO1-B', 'serial', ['08:40:00', 'T2-1'], ['09:00:00', ''], ['09:02:00', 'T4-2']];

checkCheck(
  soaked,
  {
    // Ready at 09:07 and stayed ready: thirty minutes on is 09:37.
    says: 'The partner was ready without a break in the 30 minutes after the last module settled.',
    lines: ['09:07:00 RO1 partner ready'],
  },
  [
    {
      name: 'lost ten minutes before the end',
      status: 'fail',
      plus: ['09:27:00  RO1  partner not ready', '09:28:00  RO1  partner ready'],
      says: 'The partner was lost in the 30 minutes after the last module settled.',
      lines: ['09:27:00 RO1 partner not ready'],
    },
    {
      // Ready at 09:12, and the same module: it settled in a span from 08:59:50 to 09:12:00 in which nothing was read.
      name: 'when it settled was not observed, and so not the 30 minutes that may have begun then',
      status: 'inconclusive',
      isAlone: true,
      files: {
        'poll.csv': pollText(
          log,
          10,
          [[...readyRow, ['08:40:00', 'yes'], ['09:12:00', 'yes']], serial],
          [['09:00:00', '09:11:50']],
        ),
      },
      says: 'Readiness of the partner was not observed',
      lines: ['08:59:50', '09:12:00'].map((clock) => row(clock, 'RO1', 'partner-ready', 'yes')),
    },
    {
      name: 'not ready at the end',
      status: 'fail',
      plus: ['09:27:00  RO1  partner not ready'],
      says: 'The partner was lost in the 30 minutes after the last module settled.',
      lines: ['09:27:00 RO1 partner not ready'],
    },
    {
      name: 'the new module was never ready, for more than half an hour',
      status: 'inconclusive',
      without: ['09:07:00', '09:09:00', '09:20'],
      says: 'No bring-up settled after the last insertion, so the 30 minutes never started.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'the log ends after twenty minutes',
      status: 'inconclusive',
      without: ['09:45'],
      plus: ['09:27:00  RO1 A  light off'],
      says: 'The log ends 20 min 00 s after the last module settled; 30 min 00 s are needed.',
      lines: ['09:07:00 RO1 partner ready'],
    },
    {
      name: 'readiness is never logged',
      status: 'not-observed',
      without: ['partner'],
      says: 'Readiness of the partner was never logged.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'lost ten minutes before the log ends, which is too early, and back',
      status: 'fail',
      without: ['09:45'],
      plus: [
        '09:17:00  RO1  partner not ready',
        '09:18:00  RO1  partner ready',
        '09:27:00  RO1 A  light off',
      ],
      says: 'The partner was lost in the 30 minutes after the last module settled.',
      lines: ['09:17:00 RO1 partner not ready'],
    },
    {
      name: 'lost after the thirty minutes',
      status: 'pass',
      plus: ['09:40:00  RO1  partner not ready'],
      says: 'The partner was ready without a break in the 30 minutes after the last module settled.',
      lines: ['09:07:00 RO1 partner ready', '09:40:00 RO1 partner not ready'],
    },
    {
      name: 'only the presence of a partner is logged',
      status: 'not-observed',
      without: ['partner'],
      plus: [
        '08:40:00  RO1  partner present',
        '09:00:00  RO1  partner absent',
        '09:02:00  RO1  partner present',
        '09:30:00  RO1  partner absent',
      ],
      says: 'Readiness of the partner was never logged.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      // Read as ready at 09:07:00: the thirty minutes end at 09:37:00, the loss came after that reading.
      name: 'polled every 10 s, lost between the last reading of the thirty minutes and the next',
      status: 'pass',
      isAlone: true,
      files: { 'poll.csv': pollText(log, 10, [ready('09:37:01'), serial]) },
      says: "in the 30 minutes after the last module settled (breaks shorter than the poll's 10 s are not excluded).",
      lines: [row('09:07:00', ...readyRow, 'yes'), row('09:37:10', ...readyRow, 'no')],
    },
    {
      // Every 35 s from 08:40:00 on: read as ready at 09:07:25 (47 times 35 s are 27 min 25 s), so the thirty minutes end at
      // 09:37:25, between the readings at 09:37:10 (98 times) and 09:37:45.
      name: 'polled every 35 s, lost between the two readings between which the thirty minutes end',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': pollText(log, 35, [ready('09:37:11'), serial]) },
      says: 'The partner was lost at about the start or the end of the 30 minutes after the last module settled.',
      lines: [row('09:37:45', ...readyRow, 'no')],
    },
    {
      // Every 60 s: ready in (09:06, 09:07], lost in (09:07, 09:08], which may be a minute and more; ready again in (09:08, 09:09].
      name: 'polled every 60 s, ready at one reading, lost at the next, and ready from then on',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': pollText(log, 60, [twice('09:08:00', '09:09:00'), serial]) },
      says: 'The partner was lost within the 30 minutes or outside them: the time when the last module settled is not known closely enough to tell.',
      lines: [row('09:08:00', ...readyRow, 'no')],
    },
    {
      // Every 10 s: ready in (09:06:50, 09:07:00], lost in (09:07:10, 09:07:20]: 30 s at most, which settles nothing.
      name: 'polled every 10 s, ready for less than a minute, lost, and ready from then on',
      status: 'pass',
      isAlone: true,
      files: { 'poll.csv': pollText(log, 10, [twice('09:07:20', '09:09:00'), serial]) },
      says: 'The partner was ready without a break in the 30 minutes after the last module settled',
      lines: [row('09:09:00', ...readyRow, 'yes')],
    },
    {
      // Every 300 s: ready in (09:05, 09:10]. The thirty minutes end in (09:35, 09:40]; lost in (09:35, 09:40].
      name: 'polled every 5 min, lost within the bounds of the end of the thirty minutes',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': pollText(log, 300, [ready('09:36:00'), serial]) },
      says: 'The partner was lost within the 30 minutes or outside them: the time when the last module settled is not known closely enough to tell.',
      lines: [row('09:40:00', ...readyRow, 'no')],
    },
  ],
);
