import { roleConflicts } from '../../../src/analyze/role-conflicts.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';

const begin = `10:00:00  RO1 A  role active
               10:00:00  RO1 B  role standby`;
const poll = (rows: readonly string[]): string => `time,unit,role\n${rows.join('\n')}\n`;

checkAnalyzer(roleConflicts, {
  reports: [
    {
      name: 'neither half active for 1.001 s',
      journal: `${begin}
                10:10:00.000  RO1 A  role standby
                10:10:01.001  RO1 B  role active`,
      findings: [{ id: 'none-active', lines: [3, 4], figures: { low: 1.001 } }],
    },
    {
      name: 'both halves active for two seconds',
      journal: `${begin}
                10:10:00  RO1 B  role active
                10:10:02  RO1 A  role standby`,
      findings: [{ id: 'two-active', lines: [3, 4], figures: { low: 2 } }],
    },
  ],
  quiet: [
    {
      name: 'a gap of one second is what a switchover takes',
      journal: `${begin}
                10:10:00  RO1 A  role standby
                10:10:01  RO1 B  role active`,
    },
    {
      name: 'a gap that the spacing of the poll can hide',
      files: {
        'poll.csv': poll([
          '2026-03-14T10:00:00.0Z,RO1-A,active',
          '2026-03-14T10:00:00.0Z,RO1-B,standby',
          '2026-03-14T10:00:10.0Z,RO1-A,standby',
          '2026-03-14T10:00:10.0Z,RO1-B,standby',
          '2026-03-14T10:00:20.0Z,RO1-A,standby',
          '2026-03-14T10:00:20.0Z,RO1-B,active',
          '2026-03-14T10:00:30.0Z,RO1-A,standby',
          '2026-03-14T10:00:30.0Z,RO1-B,active',
        ]),
      },
    },
  ],
  notObserved: [{ name: 'no role is ever logged', journal: '10:00:00  RO1  partner ready' }],
});
