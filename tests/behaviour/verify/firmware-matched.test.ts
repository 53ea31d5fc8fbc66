import { firmwareMatched } from '../../../src/verify/firmware-matched.ts';
import { checkCheck } from '../../support/check-check.ts';

/** The lines of the switchover: who left, who took over, the command, and since when the partner was ready. */
const switchover = [
  '09:20:01 RO1 A role standby',
  '09:20:01.1 RO1 B role active',
  '09:20:00 RO1 switchover command',
  '09:07:00 RO1 partner ready',
];

checkCheck(
  firmwareMatched,
  {
    says: 'At the end both halves report firmware 6.4.1. At the switchover to half B the firmware was the same.',
    lines: ['08:40:00 RO1 A firmware 6.4.1', '09:05:00 RO1 B firmware 6.4.1', ...switchover],
  },
  [
    {
      name: 'the standby was never reflashed',
      status: 'fail',
      without: ['09:05:00  RO1 B  firmware', 'reflash'],
      says: 'At the end the firmware differs: half A 6.4.1, half B 6.2.0. The switchover to half B came while the firmware differed.',
      lines: ['08:40:00 RO1 A firmware 6.4.1', '09:02:00 RO1 B firmware 6.2.0', ...switchover],
    },
    {
      name: 'matched at the end, but not at the switchover',
      status: 'fail',
      without: ['09:05:00  RO1 B  firmware', 'reflash'],
      plus: ['09:25:00  RO1 B  firmware 6.4.1'],
      says: 'The switchover to half B came while the firmware differed.',
      lines: switchover,
    },
    {
      name: 'the firmware of one half is not known',
      status: 'inconclusive',
      without: ['A  firmware'],
      says: 'The firmware of half A at the end is not known. The firmware at the switchover to half B is not known.',
      lines: ['09:05:00 RO1 B firmware 6.4.1', ...switchover],
    },
    {
      name: 'firmware is never logged',
      status: 'not-observed',
      without: ['firmware'],
      says: 'Firmware was never logged.',
      lines: ['08:40:00 RO1 configuration current', '09:45:00 RO1 configuration current'],
    },
  ],
);
