import { notFlapping } from '../../../src/verify/not-flapping.ts';
import { checkCheck } from '../../support/check-check.ts';
import { pollText, row } from '../../support/clean-swap.ts';

checkCheck(
  notFlapping,
  {
    says: 'The partner was not lost again.',
    lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
  },
  [
    {
      name: 'three losses within ten minutes',
      status: 'fail',
      plus: [
        '09:10:00  RO1  partner not ready',
        '09:11:00  RO1  partner ready',
        '09:13:00  RO1  partner not ready',
        '09:14:00  RO1  partner ready',
        '09:16:00  RO1  partner not ready',
        '09:17:00  RO1  partner ready',
      ],
      says: 'The standby was flapping: 3 losses in a row.',
      lines: [
        '09:10:00 RO1 partner not ready',
        '09:13:00 RO1 partner not ready',
        '09:16:00 RO1 partner not ready',
      ],
    },
    {
      // Settled at 09:07, so the swap ends at 09:37.
      name: 'one loss, at the very end of the swap',
      status: 'pass',
      plus: ['09:37:00  RO1  partner not ready', '09:38:00  RO1  partner ready'],
      says: 'Counted losses: 1, too few for flapping.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      // The swap ends at 09:37:00; the third loss lies in (09:36:30, 09:37:30].
      name: 'three losses, the third between two readings of which one is after the end of the swap',
      status: 'inconclusive',
      files: {
        'poll.csv': pollText(['09:10:30', '09:50:30'], 60, [
          [
            'RO1',
            'partner-ready',
            ['09:10:30', 'yes'],
            ['09:33:30', 'no'],
            ['09:34:30', 'yes'],
            ['09:35:30', 'no'],
            ['09:36:30', 'yes'],
            ['09:37:30', 'no'],
            ['09:38:30', 'yes'],
          ],
        ]),
      },
      says: 'The standby was flapping, 3 losses in a row; the logs do not show whether that began before the end of the swap.',
      lines: ['09:33:30', '09:35:30', '09:37:30'].map((clock) => row(clock, 'RO1', 'partner-ready', 'no')),
    },
    {
      name: 'readiness is never logged',
      status: 'not-observed',
      without: ['partner'],
      says: 'Losses of the partner were never logged.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      // Their penalty is below the re-use value again half an hour later.
      name: 'three losses long before the swap',
      status: 'pass',
      plus: [
        '07:00:00  RO1  partner ready',
        '07:10:00  RO1  partner not ready',
        '07:11:00  RO1  partner ready',
        '07:13:00  RO1  partner not ready',
        '07:14:00  RO1  partner ready',
        '07:16:00  RO1  partner not ready',
        '07:17:00  RO1  partner ready',
      ],
      says: 'The partner was not lost again.',
      lines: ['07:00:00 RO1 partner ready', '09:45:00 RO1 configuration current'],
    },
    {
      // Settled at 09:07, so the swap ends at 09:37.
      name: 'three losses after the swap',
      status: 'pass',
      plus: [
        '09:38:00  RO1  partner not ready',
        '09:39:00  RO1  partner ready',
        '09:40:00  RO1  partner not ready',
        '09:41:00  RO1  partner ready',
        '09:42:00  RO1  partner not ready',
        '09:43:00  RO1  partner ready',
      ],
      says: 'The partner was not lost again.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'three restarts in ten minutes, each with the loss it brings, which are counted apart',
      status: 'pass',
      plus: ['09:10', '09:13', '09:16'].flatMap((minute) => [
        `${minute}:00  RO1 B  module restart`,
        `${minute}:02  RO1    partner not ready`,
        `${minute}:50  RO1    partner ready`,
      ]),
      says: 'The partner was not lost again.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'lost by the reflash, which is planned',
      status: 'pass',
      plus: ['09:02:30  RO1  partner ready', '09:03:00  RO1  partner not ready'],
      says: 'The partner was not lost again.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'three losses between the swaps of the two halves',
      status: 'fail',
      plus: [
        '09:25:00  RO1  partner not ready',
        '09:26:00  RO1  partner ready',
        '09:28:00  RO1  partner not ready',
        '09:29:00  RO1  partner ready',
        '09:31:00  RO1  partner not ready',
        '09:32:00  RO1  partner ready',
        '08:40:00  RO1 A  serial T2-9',
        '10:30:00  RO1 A  module removed',
        '10:30:00  RO1    partner not ready',
        '10:32:00  RO1 A  module inserted',
        '10:32:00  RO1 A  serial T4-9',
        '10:35:00  RO1    partner ready',
        '11:20:00  RO1    configuration current',
      ],
      says: 'The standby was flapping: 3 losses in a row.',
      lines: [
        '09:25:00 RO1 partner not ready',
        '09:28:00 RO1 partner not ready',
        '09:31:00 RO1 partner not ready',
      ],
    },
  ],
);
