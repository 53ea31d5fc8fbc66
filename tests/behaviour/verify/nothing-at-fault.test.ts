import { nothingAtFault } from '../../../src/verify/nothing-at-fault.ts';
import { checkCheck } from '../../support/check-check.ts';

/** The supplies as the log states them at its begin. */
const supplies = ['08:40:00 RO1 A supply good', '08:40:00 RO1 B supply good'];
const good = 'At the end both supplies are good.';
const noFault = 'Faults were never logged.';
const steady = 'At the end the light of half B, the standby, is steady.';

checkCheck(
  nothingAtFault,
  {
    // After the switchover half A is the standby, and the log tells only of the light of half B.
    says: `${good} The light of half A, the standby at the end, was never logged. ${noFault}`,
    lines: supplies,
  },
  [
    {
      name: 'the supply of the new half at fault at the end',
      status: 'fail',
      plus: ['09:30:00  RO1 B  supply fault'],
      says: 'At the end the supply of half B is at fault.',
      lines: ['09:30:00 RO1 B supply fault'],
    },
    {
      name: 'a supply that was at fault and is good again',
      status: 'pass',
      plus: ['09:30:00  RO1 B  supply fault', '09:31:00  RO1 B  supply good'],
      says: good,
      lines: ['08:40:00 RO1 A supply good', '09:31:00 RO1 B supply good'],
    },
    {
      // Settled at 09:07, so the swap ends at 09:37.
      name: 'a supply at fault after the swap',
      status: 'pass',
      plus: ['09:37:00.1  RO1 B  supply fault'],
      says: good,
      lines: supplies,
    },
    {
      name: 'the supply of one half is never logged',
      status: 'inconclusive',
      without: ['A  supply'],
      says: 'The supply of half A at the end is not known.',
      lines: ['08:40:00 RO1 B supply good'],
    },
    {
      name: 'the light of the standby flashes again at the end',
      status: 'fail',
      without: ['09:20'],
      plus: ['09:30:00  RO1 B  light flashing'],
      says: 'At the end the light of half B, the standby, flashes again.',
      lines: ['09:30:00 RO1 B light flashing'],
    },
    {
      name: 'the light of the standby flashed again and is steady at the end',
      status: 'pass',
      without: ['09:20'],
      plus: ['09:30:00  RO1 B  light flashing', '09:31:00  RO1 B  light steady'],
      says: `${good} ${steady} ${noFault}`,
      lines: [...supplies, '09:31:00 RO1 B light steady'],
    },
    {
      name: 'the light of the new module was never steady, which is judged elsewhere',
      status: 'pass',
      without: ['09:20', '09:09:00'],
      says: `${good} The light of half B was never steady after its insertion. ${noFault}`,
      lines: [...supplies, '09:02:00 RO1 B light flashing'],
    },
    {
      name: 'the light was steady before the work, and was not logged after the insertion',
      status: 'pass',
      without: ['09:20', 'light'],
      plus: ['08:40:00  RO1 B  light steady'],
      says: `${good} The light of half B was not logged after its insertion. ${noFault}`,
      lines: supplies,
    },
    {
      name: 'the light was steady before the removal, and nothing was put in, for a quarter of an hour',
      status: 'pass',
      without: ['09:0', '09:20', '09:45'],
      plus: [
        '08:40:00  RO1 B  light steady',
        '09:00:00  RO1 B  module removed',
        '09:15:00  RO1    configuration current',
      ],
      says: `${good} No module is in half B at the end, and so no light. ${noFault}`,
      lines: supplies,
    },
    {
      name: 'after a switchover the light of the half that was not replaced flashes',
      status: 'fail',
      plus: ['09:21:00  RO1 A  light steady', '09:30:00  RO1 A  light flashing'],
      says: 'At the end the light of half A, the standby, flashes again.',
      lines: ['09:30:00 RO1 A light flashing'],
    },
    {
      name: 'a fault of the new module after it had settled',
      status: 'fail',
      plus: ['09:15:00  RO1 B  fault'],
      says: 'A fault of half B was logged after its insertion, and no bring-up settled after it.',
      lines: ['09:15:00 RO1 B fault'],
    },
    {
      name: 'a fault of the new module, and a restart that settled after it',
      status: 'pass',
      without: ['09:20'],
      plus: [
        '09:15:00  RO1 B  fault',
        '09:16:00  RO1 B  module restart',
        '09:16:00  RO1    partner not ready',
        '09:18:00  RO1    partner ready',
        '09:49:00  RO1    configuration current',
      ],
      says: `${good} ${steady} Every fault of a new module was followed by a bring-up that settled.`,
      lines: [...supplies, '09:09:00 RO1 B light steady', '09:15:00 RO1 B fault'],
    },
    {
      name: 'a fault of the new module while it started, which then settled',
      status: 'pass',
      without: ['09:20'],
      plus: ['09:02:00  RO1 B  fault'],
      says: 'Every fault of a new module was followed by a bring-up that settled.',
      lines: [...supplies, '09:09:00 RO1 B light steady', '09:02:00 RO1 B fault'],
    },
    {
      name: 'a fault of the old module, and one of the half that was not replaced',
      status: 'pass',
      without: ['09:20'],
      plus: ['08:50:00  RO1 B  fault', '09:15:00  RO1 A  fault'],
      says: `${good} ${steady} No fault of a new module was logged.`,
      lines: [...supplies, '09:09:00 RO1 B light steady', '08:50:00 RO1 B fault'],
    },
    {
      name: 'a fault that names no half, after it had settled',
      status: 'inconclusive',
      plus: ['09:15:00  RO1  fault'],
      says: 'A fault that names no half was logged after the insertion, and no bring-up settled after it.',
      lines: ['09:15:00 RO1 fault'],
    },
    {
      name: 'neither supplies nor a light nor a fault are ever logged',
      status: 'not-observed',
      without: ['supply', 'light'],
      says: 'Neither supplies nor the light of the standby nor faults were ever logged.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
    {
      name: 'supplies are never logged, the light of the standby is',
      status: 'pass',
      without: ['supply', '09:20'],
      says: `${steady} Supplies were never logged. ${noFault}`,
      lines: ['09:09:00 RO1 B light steady'],
    },
    {
      name: 'the light is never logged, supplies and a fault are',
      status: 'pass',
      without: ['light', '09:20'],
      plus: ['08:50:00  RO1 B  fault'],
      says: `${good} No fault of a new module was logged. The light of half B, the standby at the end, was never logged.`,
      lines: [...supplies, '08:50:00 RO1 B fault'],
    },
    {
      name: 'a fault a minute ago, while the swap is still open',
      status: 'inconclusive',
      without: ['09:20', '09:45'],
      plus: ['09:15:00  RO1 B  fault', '09:16:00  RO1    configuration current'],
      says: 'The swap is still open. So far: a fault of half B was logged after its insertion',
      lines: ['09:15:00 RO1 B fault'],
    },
  ],
);
