import { configurationCurrent } from '../../../src/verify/configuration-current.ts';
import { checkCheck } from '../../support/check-check.ts';
import { pollText, row } from '../../support/clean-swap.ts';

checkCheck(
  configurationCurrent,
  { says: 'At the end no configuration is pending.', lines: ['08:40:00 RO1 configuration current'] },
  [
    {
      name: 'pending at the end',
      status: 'fail',
      without: ['09:45'],
      plus: ['09:25:00  RO1  configuration pending', '09:45:00  RO1 A  light off'],
      says: 'At the end a configuration is still pending.',
      lines: ['09:25:00 RO1 configuration pending'],
    },
    {
      name: 'pending, then sent',
      status: 'pass',
      plus: ['09:25:00  RO1  configuration pending', '09:30:00  RO1  configuration current'],
      says: 'At the end no configuration is pending.',
      lines: ['09:30:00 RO1 configuration current'],
    },
    {
      // Settled at 09:07, so the swap ends at 09:37; the only word of it comes at 09:45.
      name: 'first logged after the swap',
      status: 'inconclusive',
      without: ['08:40:00  RO1    configuration'],
      says: 'The configuration state at the end is not known.',
      lines: ['08:40:00 RO1 partner ready', '09:45:00 RO1 configuration current'],
    },
    {
      // The swap ends at 09:37:00; at 09:36:30 the poll read current, at 09:37:30 pending.
      name: 'polled as pending at a reading after the end, and as current at the one before it',
      status: 'inconclusive',
      without: ['configuration'],
      files: {
        'poll.csv': pollText(['08:40:30', '09:50:30'], 60, [
          ['RO1', 'configuration', ['08:40:30', 'current'], ['09:37:30', 'pending']],
        ]),
      },
      says: 'The configuration state at the end is not known: it became pending within 1 min 00 s of then.',
      lines: [
        row('08:40:30', 'RO1', 'configuration', 'current'),
        row('09:37:30', 'RO1', 'configuration', 'pending'),
      ],
    },
    {
      name: 'never logged',
      status: 'not-observed',
      without: ['configuration'],
      plus: ['09:45:00  RO1 A  light off'],
      says: 'The configuration state was never logged.',
      lines: ['08:40:00 RO1 partner ready', '09:45:00 RO1 A light off'],
    },
  ],
);
