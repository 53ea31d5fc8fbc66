import { nothingAtFault } from '../../../src/verify/nothing-at-fault.ts';
import { checkCheck } from '../../support/check-check.ts';
import { pollText, row } from '../../support/clean-swap.ts';

/** The same swap polled every 10 s, without a switchover, and the supply of half B as it became. */
function polled(
  to: string,
  gaps: readonly (readonly [string, string])[] = [],
  ...lights: readonly [string, string][]
): string {
  return pollText(
    ['08:40:00', to],
    10,
    [
      ['RO1', 'partner-ready', ['08:40:00', 'yes'], ['09:00:00', 'no'], ['09:07:00', 'yes']],
      ['RO1-A', 'role', ['08:40:00', 'active']],
      ['RO1-A', 'supply', ['08:40:00', 'good']],
      ['RO1-B', 'supply', ['08:40:00', 'good']],
      ...(lights.length === 0
        ? []
        : [
            ['RO1-B', 'role', ['08:40:00', 'standby']] as const,
            ['RO1-B', 'light', ['08:40:00', 'steady'], ...lights] as const,
          ]),
      ['RO1-B', 'serial', ['08:40:00', 'T2-1'], ['09:00:00', ''], ['09:02:00', 'T4-2']],
    ],
    gaps,
  );
}

checkCheck(
  nothingAtFault,
  {
    says: 'At the end both supplies are good.',
    lines: ['08:40:00 RO1 A supply good', '08:40:00 RO1 B supply good'],
  },
  [
    {
      // The soak from 09:07:00 on is over at 09:37:00, in the gap from 09:32:00 to 09:42:00.
      name: 'not polled for the last minutes of the swap',
      status: 'inconclusive',
      isAlone: true,
      files: { 'poll.csv': polled('09:50:00', [['09:32:10', '09:41:50']]) },
      says: 'The supply of half A at the end is not known: it was not observed for the last 5 min 00 s.',
      lines: [
        row('08:40:00', 'RO1-A', 'supply', 'good'),
        row('09:32:00', 'RO1-A', 'supply', 'good'),
        row('09:42:00', 'RO1-A', 'role', 'active'),
        row('08:40:00', 'RO1-B', 'supply', 'good'),
        row('09:32:00', 'RO1-B', 'serial', 'T4-2'),
        row('09:42:00', 'RO1-B', 'supply', 'good'),
      ],
    },
    {
      // Nothing was read from 08:59:50 to 09:10:10: the serial says that the module was replaced in there, the light was steady by then.
      name: 'the light, steady when a poll first reads the new module, flashes at the end',
      status: 'fail',
      isAlone: true,
      files: { 'poll.csv': polled('09:50:00', [['09:00:00', '09:10:00']], ['09:30:00', 'flashing']) },
      says: 'At the end the light of half B, the standby, flashes again.',
      lines: [row('09:30:00', 'RO1-B', 'light', 'flashing')],
    },
  ],
);
