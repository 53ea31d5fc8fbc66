import { roleFlapping } from '../../../src/analyze/role-flapping.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';

const begin = `10:00:00  RO1 A  role active
               10:00:00  RO1 B  role standby`;
/** The active role passes from one half to the other, within the same stamp. */
const pass = (clock: string, from: 'A' | 'B'): string =>
  `${clock}:00  RO1 ${from}  role standby\n${clock}:00  RO1 ${from === 'A' ? 'B' : 'A'}  role active`;
const thrice = `${pass('10:40', 'A')}\n${pass('10:45', 'B')}\n${pass('10:50', 'A')}`;
const command = (clock: string): string => `${clock}:55  RO1  switchover command`;

// As for flapping: losses 300 s apart have the penalties 1, 1 * 2^(-1/3) + 1 = 1.794 and 1.794 * 2^(-1/3) + 1 = 2.424.
checkAnalyzer(roleFlapping, {
  reports: [
    {
      name: 'the role passes to and fro three times within ten minutes',
      journal: `${begin}\n${thrice}`,
      findings: [
        {
          id: 'role-flapping',
          lines: [3, 5, 7],
          figures: { losses: 3, seconds: 600, penalty: 2.424 },
        },
      ],
    },
    {
      name: 'each half in turn is left without a role, and the other takes over',
      journal: `${begin}
                10:40:00  RO1 A  role none
                10:40:02  RO1 B  role active
                10:44:00  RO1 A  role standby
                10:45:00  RO1 B  role none
                10:45:02  RO1 A  role active
                10:49:00  RO1 B  role standby
                10:50:00  RO1 A  role none
                10:50:02  RO1 B  role active`,
      findings: [{ id: 'role-flapping', lines: [3, 6, 9], figures: { losses: 3, seconds: 600 } }],
    },
    {
      name: 'by itself, where commands are logged',
      journal: `${begin}
                ${command('10:01')}
                10:02:00  RO1 A  role standby
                10:02:00  RO1 B  role active
                11:40:00  RO1 B  role standby
                11:40:00  RO1 A  role active
                11:45:00  RO1 A  role standby
                11:45:00  RO1 B  role active
                11:50:00  RO1 B  role standby
                11:50:00  RO1 A  role active`,
      findings: [{ id: 'role-flapping', lines: [6, 8, 10], figures: { losses: 3 } }],
    },
    {
      name: 'without logged commands, sixteen minutes after the end of the work',
      journal: `${begin}
                10:05:00  RO1 B  removed
                10:10:00  RO1 B  inserted
                10:24:00  RO1    partner ready
                ${thrice}`,
      findings: [{ id: 'role-flapping', lines: [6, 8, 10], figures: { losses: 3 } }],
    },
  ],
  quiet: [
    {
      name: 'two times within five minutes',
      journal: `${begin}\n${pass('10:40', 'A')}\n${pass('10:45', 'B')}`,
    },
    {
      name: 'every time by command',
      journal: `${begin}
                ${command('10:39')}
                ${pass('10:40', 'A')}
                ${command('10:44')}
                ${pass('10:45', 'B')}
                ${command('10:49')}
                ${pass('10:50', 'A')}`,
    },
    {
      name: 'without logged commands, within fifteen minutes of the work',
      journal: `${begin}
                10:05:00  RO1 B  removed
                10:10:00  RO1 B  inserted
                10:35:00  RO1    partner ready
                ${thrice}`,
    },
    {
      name: 'with restarts of the active half that explain it',
      journal: `${begin}
                10:40:00  RO1 A  module restart
                10:40:01  RO1 A  role standby
                10:40:01  RO1 B  role active
                10:45:00  RO1 B  module restart
                10:45:01  RO1 B  role standby
                10:45:01  RO1 A  role active
                10:50:00  RO1 A  module restart
                10:50:01  RO1 A  role standby
                10:50:01  RO1 B  role active`,
    },
  ],
  notObserved: [{ name: 'no role is ever logged', journal: '10:00:00  RO1 B  light steady' }],
});
