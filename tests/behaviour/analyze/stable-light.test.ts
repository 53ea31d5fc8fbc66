import { stableLight } from '../../../src/analyze/stable-light.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';

const start = `10:00:00  RO1 A  role active
               10:00:00  RO1 B  role standby
               10:01:00  RO1 B  module restart
               10:01:00  RO1 B  light flashing`;

checkAnalyzer(stableLight, {
  reports: [
    {
      name: 'steady one millisecond past five minutes',
      journal: `${start}
                10:06:00.001  RO1 B  light steady
                10:08:00      RO1 B  firmware 6.4.1`,
      findings: [
        { id: 'light-timeout', half: 'B', lines: [3, 5], figures: { low: 300.001, limitSeconds: 300 } },
      ],
    },
    {
      name: 'never steady and watched past the limit',
      journal: `${start}
                10:06:01  RO1 B  firmware 6.4.1`,
      findings: [{ id: 'light-timeout', half: 'B', lines: [3, 4, 5], figures: { seconds: 301 } }],
    },
    {
      name: 'steady in time, but lost before it had held; steady again too late',
      journal: `${start}
                10:03:00  RO1 B  light steady
                10:03:59  RO1 B  light flashing
                10:06:30  RO1 B  light steady
                10:08:00  RO1 B  firmware 6.4.1`,
      findings: [{ id: 'light-timeout', half: 'B', figures: { low: 330 } }],
    },
  ],
  quiet: [
    {
      name: 'steady at exactly five minutes',
      journal: `${start}
                10:06:00.000  RO1 B  light steady
                10:07:00      RO1 B  firmware 6.4.1`,
    },
    {
      name: 'off because the half became active: the steady light counts as held',
      journal: `${start}
                10:05:50  RO1 B  light steady
                10:06:10  RO1 A  role standby
                10:06:10  RO1 B  role active
                10:06:10  RO1 B  light off
                10:09:00  RO1 B  firmware 6.4.1`,
    },
  ],
  notObserved: [
    {
      name: 'the log ends before the limit',
      journal: `${start}
                10:06:00  RO1 B  firmware 6.4.1`,
    },
    { name: 'no light is ever logged', journal: '10:00:00  RO1 B  module restart' },
  ],
});
