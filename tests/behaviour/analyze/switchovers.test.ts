import { switchovers } from '../../../src/analyze/switchovers.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';

const begin = `10:00:00  RO1 A  role active
               10:00:00  RO1 B  role standby`;
const exchange = `10:10:00.000  RO1 A  role standby
                  10:10:00.100  RO1 B  role active`;

checkAnalyzer(switchovers, {
  reports: [
    {
      name: 'the partner was not ready',
      journal: `${begin}
                10:00:00  RO1  partner not ready
                10:09:30  RO1  switchover command
                ${exchange}`,
      findings: [{ id: 'switchover-unready', half: 'B' }],
    },
    {
      name: 'a command one millisecond too early',
      journal: `${begin}
                10:00:00  RO1  partner ready
                10:09:29.999  RO1  switchover command
                ${exchange}`,
      findings: [{ id: 'switchover-uncommanded', half: 'B', figures: { readySeconds: 600 } }],
    },
  ],
  quiet: [
    {
      name: 'commanded half a minute before, onto a ready partner that the switchover itself makes unready',
      journal: `${begin}
                10:00:00  RO1  partner ready
                10:09:30  RO1  switchover command
                ${exchange}
                10:10:00.200  RO1  partner not ready`,
    },
  ],
  notObserved: [
    {
      name: 'readiness is never logged',
      journal: `${begin}\n10:09:30  RO1  switchover command\n${exchange}`,
    },
    { name: 'no role is ever logged', journal: '10:00:00  RO1  partner ready' },
  ],
});
