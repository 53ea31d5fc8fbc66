import { baselineRedundant } from '../../../src/verify/baseline-redundant.ts';
import { checkCheck } from '../../support/check-check.ts';
import { type Polled, pollText, row } from '../../support/clean-swap.ts';

const [hour, readyRow] = [['08:40:00', '09:40:00'] as const, ['RO1', 'partner-ready'] as const];
/** Ready but from 09:00 to 09:07, and what else became of it before. */
const ready = (...before: readonly (readonly [string, string])[]): Polled => [
  ...readyRow,
  ['08:40:00', 'yes'],
  ...before,
  ['09:00:00', 'no'],
  ['09:07:00', 'yes'],
];
/** Out from 09:00 to 09:02. */
const serial: Polled = ['RO1-B', 'serial', ['08:40:00', 'T2-1'], ['09:00:00', ''], ['09:02:00', 'T4-2']];
/** Blank from 08:58 on, for good. */
const blankA: Polled = ['RO1-A', 'serial', ['08:40:00', 'T2-9'], ['08:58:00', '']];

checkCheck(
  baselineRedundant,
  {
    says: 'The partner was ready without a break in the 15 minutes before the first removal.',
    lines: ['08:40:00 RO1 partner ready', '09:00:00 RO1 partner not ready'],
  },
  [
    {
      name: 'lost ten minutes before the removal',
      status: 'fail',
      plus: ['08:50:00  RO1  partner not ready', '08:51:00  RO1  partner ready'],
      says: 'The partner was lost in the 15 minutes before the first removal.',
      lines: ['08:50:00 RO1 partner not ready'],
    },
    {
      name: 'not ready when the fifteen minutes begin',
      status: 'fail',
      plus: ['08:41:00  RO1  partner not ready', '08:46:00  RO1  partner ready'],
      says: 'The partner was not ready at the start of the 15 minutes before the first removal.',
      lines: ['08:41:00 RO1 partner not ready'],
    },
    {
      name: 'lost and back before the fifteen minutes',
      status: 'pass',
      plus: ['08:41:00  RO1  partner not ready', '08:44:00  RO1  partner ready'],
      says: 'The partner was ready without a break',
      lines: ['08:44:00 RO1 partner ready', '09:00:00 RO1 partner not ready'],
    },
    {
      name: 'the log begins fourteen minutes before the removal',
      status: 'inconclusive',
      without: ['08:40:00'],
      plus: ['08:46:00  RO1  partner ready', '08:46:00  RO1 B  serial T2-1'],
      says: 'The log covers only the last 14 min 00 s of the 15 minutes before the first removal.',
      lines: ['08:46:00 RO1 partner ready', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'readiness is never logged',
      status: 'not-observed',
      without: ['partner'],
      says: 'Readiness of the partner was never logged.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'the log begins fifteen minutes before the removal',
      status: 'pass',
      without: ['08:40:00'],
      plus: ['08:45:00  RO1  partner ready', '08:45:00  RO1 B  serial T2-1'],
      says: 'The partner was ready without a break',
      lines: ['08:45:00 RO1 partner ready', '09:00:00 RO1 partner not ready'],
    },
    {
      name: 'lost and back within the second before the fifteen minutes',
      status: 'pass',
      plus: ['08:44:59.5  RO1  partner not ready', '08:44:59.8  RO1  partner ready'],
      says: 'The partner was ready without a break',
      lines: ['08:44:59.8 RO1 partner ready', '09:00:00 RO1 partner not ready'],
    },
    {
      name: 'back at the instant at which the fifteen minutes begin',
      status: 'pass',
      plus: ['08:44:00  RO1  partner not ready', '08:45:00  RO1  partner ready'],
      says: 'The partner was ready without a break',
      lines: ['08:45:00 RO1 partner ready', '09:00:00 RO1 partner not ready'],
    },
    {
      name: 'lost at the instant at which the fifteen minutes begin',
      status: 'fail',
      plus: ['08:45:00  RO1  partner not ready', '08:46:00  RO1  partner ready'],
      says: 'The partner was not ready at the start of the 15 minutes before the first removal.',
      lines: ['08:45:00 RO1 partner not ready'],
    },
    {
      name: 'lost before the fifteen minutes and never back',
      status: 'fail',
      without: ['09:00:00  RO1    partner', '09:07:00'],
      plus: ['08:41:00  RO1  partner not ready'],
      says: 'The partner was not ready at the start of the 15 minutes',
      lines: ['08:41:00 RO1 partner not ready'],
    },
    {
      name: 'lost five seconds before the removal, to which that belongs',
      status: 'pass',
      without: ['09:00:00  RO1    partner'],
      plus: ['08:59:55  RO1  partner not ready'],
      says: 'The partner was ready without a break',
      lines: ['08:40:00 RO1 partner ready', '08:59:55 RO1 partner not ready'],
    },
    {
      name: 'lost more than five seconds before the removal',
      status: 'fail',
      without: ['09:00:00  RO1    partner'],
      plus: ['08:59:54.9  RO1  partner not ready'],
      says: 'The partner was lost in the 15 minutes before the first removal.',
      lines: ['08:59:54.9 RO1 partner not ready'],
    },
    {
      name: 'first logged as ready five minutes before the removal',
      status: 'inconclusive',
      without: ['08:40:00  RO1    partner'],
      plus: ['08:55:00  RO1  partner ready'],
      says: 'Readiness of the partner is not known for all of the 15 minutes before the first removal.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      // The serial is last read at 08:59:50 and blank at 09:00:00: the fifteen minutes begin at 08:44:50.
      name: 'polled every 10 s, never read as lost',
      status: 'pass',
      isAlone: true,
      files: { 'poll.csv': pollText(hour, 10, [ready(), serial]) },
      says: "in the 15 minutes before the first removal (breaks shorter than the poll's 10 s are not excluded).",
      lines: [row('08:40:00', ...readyRow, 'yes'), row('09:00:00', ...readyRow, 'no')],
    },
    {
      name: 'polled every 10 s beside a journal, which would tell of a shorter break',
      status: 'pass',
      files: { 'poll.csv': pollText(['08:40:05', '09:40:05'], 10, [ready()]) },
      says: 'The partner was ready without a break in the 15 minutes before the first removal.',
      lines: [
        '08:40:00 RO1 partner ready',
        row('09:00:05', ...readyRow, 'no'),
        '09:00:00 RO1 partner not ready',
      ],
    },
    {
      name: 'polled every 10 s, lost between the first two readings of the fifteen minutes',
      status: 'fail',
      isAlone: true,
      files: { 'poll.csv': pollText(hour, 10, [ready(['08:44:55', 'no'], ['08:46:00', 'yes']), serial]) },
      says: 'The partner was lost in the 15 minutes before the first removal.',
      lines: [row('08:45:00', ...readyRow, 'no')],
    },
    {
      // Every 35 s from 08:40:00 on: the serial is last read at 08:59:50 (34 times 35 s are 19 min 50 s), so the fifteen minutes
      // begin at 08:44:50, between the readings at 08:44:40 and 08:45:15.
      name: 'polled every 35 s, lost between the two readings between which the fifteen minutes begin',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': pollText(hour, 35, [ready(['08:44:41', 'no'], ['08:46:20', 'yes']), serial]) },
      says: 'The partner was lost at about the start or the end of the 15 minutes before the first removal.',
      lines: [row('08:45:15', ...readyRow, 'no')],
    },
    {
      // Half A reports nothing from (08:57:50, 08:58:00] on: if it was removed, the partner was ready from 08:42:50 to then.
      name: 'lost as the other half went blank in a poll, which stays so',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': pollText(hour, 10, [ready(['08:58:00', 'no']), blankA, serial]) },
      says: 'whether the first removal was that of half A, which stopped reporting before that of half B',
      lines: [row('08:58:00', 'RO1-A', 'serial', '')],
    },
    {
      // In the fifteen minutes before either.
      name: 'lost ten minutes before, and the other half went blank in a poll, which stays so',
      status: 'fail',
      isAlone: true,
      files: {
        'poll.csv': pollText(hour, 10, [ready(['08:50:00', 'no'], ['08:51:00', 'yes']), blankA, serial]),
      },
      says: 'The partner was lost in the 15 minutes before the first removal.',
      lines: [row('08:50:00', ...readyRow, 'no')],
    },
    {
      name: 'not polled for ten of the fifteen minutes',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': pollText(hour, 10, [ready(), serial], [['08:46:10', '08:55:50']]) },
      says: 'Readiness of the partner was not observed for 10 min 00 s of the 15 minutes before the first removal.',
      lines: [row('08:46:00', ...readyRow, 'yes'), row('08:56:00', ...readyRow, 'yes')],
    },
    {
      // Not ready when last read, at 08:44:00, and not read again until 09:02; the note has half B out between 09:00 and 09:01.
      name: 'not ready when last read, and not polled from before the fifteen minutes to after the removal',
      status: 'inconclusive',
      isAlone: true,
      files: {
        'notes.txt':
          '2026-03-14\n09:00 RO1 removed module from slot B\n09:03 RO1 inserted module in slot B\n',
        'poll.csv': pollText(
          hour,
          10,
          [
            [...readyRow, ['08:40:00', 'yes'], ['08:43:00', 'no'], ['09:07:00', 'yes']],
            ['RO1-B', 'serial', ['08:40:00', 'T2-1'], ['08:50:00', ''], ['09:03:30', 'T4-2']],
          ],
          [['08:44:10', '09:01:50']],
        ),
      },
      says: 'Readiness of the partner was not observed for',
      lines: [row('08:44:00', ...readyRow, 'no'), row('09:02:00', ...readyRow, 'no')],
    },
  ],
);
